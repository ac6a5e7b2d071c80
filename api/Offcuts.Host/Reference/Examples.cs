namespace Offcuts.Host.Reference;

/// <summary>Bodies that work as they are; a test sends each of them.</summary>
internal static class Examples
{
    public const string Board = """
        {"species":"black-walnut","thicknessMm":25.4,"widthMm":152.4,"lengthMm":914.4,"place":"rack A","source":"writing desk",
         "batch":"log 3","warp":{"bowMm":6,"cupMm":1.5},"ends":{"left":"sound","right":"checked"}}
        """;

    public const string BoardList = """
        unit: in
        boards:
          - {species: walnut, size: 4/4 x 6 3/4 x 74, place: rack A, warp: "bow 1/4in, cup 1/16in", ends: sound}
        """;

    public const string BoardTable = """
        species,quantity,thickness,width,length,unit,place
        walnut,2,1,6.75,~74,in,rack A
        birch plywood,1,18,600,1200,mm,behind the door
        """;

    public const string BoardLines = """
        {"text":"3 @ 3/4 x 5 1/2 x 36 ash\n4/4 rough x 7 x ~62 walnut, split 3in end, rack 2\n5/4 x 4 x 30","dryRun":true}
        """;

    public const string Place = """{"reach":"behind","limitM3":0.25,"note":"move the sheets first"}""";

    public const string StockTake = """{"place":"rack A","newPlace":true}""";

    public const string StockTakeStep = """{"line":"3/4 x 5 1/2 x 36 ash"}""";

    public const string StockTakeFinish = """{"unseen":"leave"}""";

    public const string Shop = """{"unit":"inch","currency":"USD","kerfMm":3.175,"planerWidthMm":330.2}""";

    public const string KeepRule = """
        {"entries":[{"word":"never","species":["softwood"]},{"word":"keep","species":["black-walnut"],"sizes":[{"lengthMm":200,"widthMm":25},{"sectionMm2":800}]}]}
        """;

    public const string KeepRuleDocument = """
        unit: in
        rule:
          - never: any
            under: {length: 6}
          - keep: hardwood
            at least: [{length: 12, width: 2}, {length: 36, section: 1 1/4}]
        """;

    public const string Species = """{"id":"osage-orange","name":"osage orange","aliases":["hedge"],"classes":["hardwood"]}""";

    public const string Design = """
        {"name":"Wall shelf","parts":[{"name":"shelf","quantity":2,"thicknessMm":19.05,"widthMm":100,"lengthMm":600,"species":["white-ash","black-walnut"]}],
         "items":[{"name":"hook","quantity":4,"unitPrice":1.25}]}
        """;

    public const string DesignDocument = """
        name: Wall shelf
        unit: in
        parts:
          - name: shelf
            quantity: 2
            size: 3/4 x 4 x 24
            species: [ash, walnut]
        """;

    public const string QueueEntry = """{"design":"wall-shelf"}""";

    public const string PriceList = """
        {"supplier":"Riverbend","terms":{"delivery":45,"minimumOrder":120},"offers":[{"species":"white-ash","thicknessMm":25.4,
         "byVolume":{"widthsMm":[127,152.4],"lengthsMm":[1828.8,2438.4],"price":6.2,"unit":"board-foot"},"steps":[{"from":50,"price":5.8}]}]}
        """;

    public const string PriceListDocument = """
        supplier: Riverbend
        unit: in
        delivery: 45.00
        offers:
          - species: ash
            thickness: 4/4
            random: {widths: [5, 6], lengths: [6ft, 8ft], price per board foot: 6.20}
        """;

    public const string Closing = """
        {"boards":[{"number":1,"leftovers":[{"leftover":1,"kept":false}],"added":[{"size":{"thicknessMm":25.4,"widthMm":40,"lengthMm":300},"place":"offcut bin"}],"reason":"cut more freely than planned"}]}
        """;

    public const string Plan = """
        {"budgetMs":2000,"inline":{"stock":[{"id":"K7M","species":"white-ash","thicknessMm":25.4,"widthMm":150,"lengthMm":1400}],"offers":[],"shop":{},
         "design":{"name":"Rail","parts":[{"name":"rail","quantity":2,"thicknessMm":19.05,"widthMm":60,"lengthMm":600,"species":["white-ash"],"mostWidthMm":70,"spares":1}]}}}
        """;

    public const string Stretch = """
        {"parameter":"top","budgetMs":2000,"inline":{"stock":[{"id":"K7M","species":"white-ash","thicknessMm":25.4,"widthMm":150,"lengthMm":1400}],"offers":[],"shop":{},
         "design":{"name":"Bending rail","parameters":{"top":{"length":{"fromMm":400,"toMm":1500,"stepMm":25}}},
         "parts":[{"name":"rail","quantity":2,"thicknessMm":19.05,"widthMm":60,"lengthMm":400,"species":["white-ash"],"formulas":{"lengthMm":"top - 20"}}]}}}
        """;

    public const string Mix = """
        {"budgetMs":2000,"designs":[{"design":"Peg"},{"design":"Rail","least":1,"most":4}],
         "inline":{"stock":[{"id":"K7M","species":"white-ash","thicknessMm":25.4,"widthMm":150,"lengthMm":1400}],"shop":{},"builds":["Peg","Rail"],
         "design":{"name":"Peg + Rail","parts":[{"name":"Peg: peg","quantity":4,"thicknessMm":19.05,"widthMm":60,"lengthMm":300,"species":["white-ash"]},
          {"name":"Rail: rail","thicknessMm":19.05,"widthMm":60,"lengthMm":500,"species":["white-ash"]}]}}}
        """;

    public const string Fill = """
        {"budgetMs":2000,"inline":{"stock":[{"id":"K7M","species":"white-ash","thicknessMm":25.4,"widthMm":150,"lengthMm":1400}],"shop":{},
         "design":{"name":"Peg","parts":[{"name":"peg","quantity":4,"thicknessMm":19.05,"widthMm":60,"lengthMm":300,"species":["white-ash"]}]}}}
        """;
}
