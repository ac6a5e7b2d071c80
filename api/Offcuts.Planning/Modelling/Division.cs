namespace Offcuts.Planning.Modelling;

/// <summary>One way to saw a board with defects down to areas, each of which is then cut by a pattern of its own.</summary>
/// <param name="Tree">The cuts that free the areas.</param>
/// <param name="Areas">The areas from which something can be cut. To pricing each is a board of its own.</param>
/// <param name="Cuts">How many cuts free them.</param>
/// <param name="Spare">Worth in minor units of clear areas that are too small for anything but the rack.</param>
internal sealed record Division(Region Tree, IReadOnlyList<BoardType> Areas, int Cuts, double Spare);
