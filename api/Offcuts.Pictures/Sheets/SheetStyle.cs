namespace Offcuts.Pictures.Sheets;

/// <summary>How the cut sheet looks on paper, on a screen and on a telephone. No '&lt;', '&gt;' or '&amp;' may stand in it: it is written as XML and read as HTML.</summary>
internal static class SheetStyle
{
    public const string Css = """
        :root{color-scheme:light}
        body{font:14px/1.4 Arial,Helvetica,'Liberation Sans','DejaVu Sans',sans-serif;color:#000;background:#fff;max-width:760px;margin:0 auto;padding:16px;overflow-wrap:anywhere}
        h1{font-size:28px;line-height:1.15;margin:0}
        h2{font-size:19px;margin:28px 0 8px;padding-top:6px;border-top:3px solid #000;break-after:avoid}
        h3{font-size:15px;margin:14px 0 4px;break-after:avoid}
        p{margin:6px 0}
        .origin{color:#333}
        .verdict{font-size:16px;font-weight:bold;border-left:6px solid #000;padding-left:10px;margin:12px 0}
        .facts{display:grid;grid-template-columns:repeat(auto-fit,minmax(165px,1fr));gap:8px 14px;margin:0}
        .facts dt{font-size:12px;color:#333}
        .facts dd{margin:0;font-weight:bold}
        table{border-collapse:collapse;width:100%;font-size:13px;margin:4px 0 10px}
        th{text-align:left;font-size:11px;border-bottom:1.5px solid #000;padding:2px 6px 2px 0;vertical-align:bottom}
        td{border-bottom:1px solid #999;padding:3px 6px 3px 0;vertical-align:top}
        th,td{overflow-wrap:normal}
        .long{overflow-wrap:anywhere}
        tr{break-inside:avoid}
        .money,.set{white-space:nowrap}
        .tick-column{width:22px}
        input{width:15px;height:15px;margin:1px 0 0}
        .aside{font-size:12px;color:#333}
        .spoken{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
        .board{position:relative;margin:0 0 26px}
        .picture{overflow-x:auto}
        .picture svg{display:block;width:100%;min-width:660px;height:auto}
        .tables{display:grid;grid-template-columns:minmax(0,10fr) minmax(0,11fr);gap:0 22px;align-items:start;margin-top:6px}
        .mind ul,.missing ul,.changes ul{padding-left:20px;margin:4px 0}
        .mind li,.missing li,.changes li{margin:4px 0}
        .missing{border:3px solid #000;padding:0 12px 6px;margin-top:16px}
        .missing h2{border:0;margin-top:6px}
        @media (max-width:640px){
        body{padding:10px;font-size:16px}
        table{font-size:15px}
        th{font-size:12px}
        input{width:20px;height:20px}
        .tick-column{width:28px}
        .tables{grid-template-columns:minmax(0,1fr)}
        }
        @page{margin:12mm}
        @media print{
        body{max-width:none;padding:0;font-size:11pt}
        table{font-size:9.5pt}
        .board,.supplier,.sub-panel,.facts,.missing{break-inside:avoid}
        td{padding:1px 6px 1px 0}
        .board{margin-bottom:16px}
        .picture{overflow:visible}
        .picture svg{min-width:0}
        .tables{grid-template-columns:minmax(0,10fr) minmax(0,11fr)}
        }
        """;
}
