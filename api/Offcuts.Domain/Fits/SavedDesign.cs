namespace Offcuts.Domain;

/// <summary>A design of the store that may be ranked.</summary>
/// <param name="Reference">The name as paths refer to it.</param>
/// <param name="Version">Id of its content.</param>
/// <param name="Design">What it says; every part and panel names concrete species ids (see <see cref="DesignResolver"/>).</param>
public sealed record SavedDesign(string Reference, string Version, Design Design);
