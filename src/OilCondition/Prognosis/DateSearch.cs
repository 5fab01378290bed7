namespace OilCondition.Prognosis;

/// <summary>The moment at which a growing chance reaches a value, by halving to the minute.</summary>
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
        at = from;
        double lower = 0;
        var upper = latestDays;
        if (chanceBefore(from.AddDays(upper)) < wanted)
        {
            return false;
        }

        while (upper - lower > 1.0 / 1440)
        {
            var middle = (lower + upper) / 2;
            if (chanceBefore(from.AddDays(middle)) < wanted)
            {
                lower = middle;
            }
            else
            {
                upper = middle;
            }
        }

        at = from.AddDays(upper);
        return true;
    }
}
