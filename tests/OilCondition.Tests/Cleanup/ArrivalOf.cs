namespace OilCondition.Tests.Cleanup;

/// <summary>The moments of an arrival; a test that asks for one that does not exist fails.</summary>
public static class ArrivalOf
{
    public static DateTimeOffset Earliest(this Arrival<DateTimeOffset> arrival) =>
        arrival switch
        {
            Arrival<DateTimeOffset>.Already it => it.At,
            Arrival<DateTimeOffset>.Expected it => it.Earliest,
            Arrival<DateTimeOffset>.NotBefore it => it.Earliest,
            _ => throw new InvalidOperationException($"{arrival} has no early end."),
        };

    public static DateTimeOffset Estimate(this Arrival<DateTimeOffset> arrival) =>
        arrival.TryEstimate(out var estimate)
            ? estimate
            : throw new InvalidOperationException($"{arrival} has no estimate.");

    public static DateTimeOffset Latest(this Arrival<DateTimeOffset> arrival) =>
        arrival switch
        {
            Arrival<DateTimeOffset>.Already it => it.At,
            Arrival<DateTimeOffset>.Expected it => it.Latest,
            _ => throw new InvalidOperationException($"{arrival} has no late end."),
        };
}
