using Offcuts.Testing;

namespace Offcuts.Planning.Tests;

// 1200 shops each.
public sealed class SmallestInchShopTests() : AuditedShops(ShopScale.Smallest, metric: false, TimeSpan.FromMilliseconds(40));

public sealed class SmallestMetricShopTests() : AuditedShops(ShopScale.Smallest, metric: true, TimeSpan.FromMilliseconds(40));
