using OilCondition.Statistics;

namespace OilCondition.Prognosis;

/// <summary>The moment at which a growing chance reaches a value.</summary>
internal static class DateSearch
{
    public static bool TryFind(
        Func<DateTimeOffset, double> chanceBefore,
        double wanted,
        DateTimeOffset from,
        double latestDays,
        out DateTimeOffset at
    )
    {
        Span<double> memory = stackalloc double[ChanceSearch.Memory];
        var search = new ChanceSearch(days => chanceBefore(from.AddDays(days)), 0, latestDays, 0, memory);
        var found = search.TryFind(wanted, out var days);
        at = from.AddDays(days);
        return found;
    }
}
