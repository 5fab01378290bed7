namespace OilCondition.Tests.Treatment;

/// <summary>What tests ask of an answer to 'when is it reached'.</summary>
internal static class Arrivals
{
    public static void ShouldBeExpected(this Arrival<TimeSpan>? arrival) =>
        arrival.ShouldBeOfType<Arrival<TimeSpan>.Expected>();

    /// <summary>So from the start, in no time.</summary>
    public static void ShouldBeAlready(this Arrival<TimeSpan>? arrival) =>
        arrival.ShouldBeOfType<Arrival<TimeSpan>.Already>().At.ShouldBe(TimeSpan.Zero);

    public static TimeSpan Time(this Arrival<TimeSpan>? arrival) =>
        arrival.ShouldBeOfType<Arrival<TimeSpan>.Expected>().Estimate;

    public static double Hours(this Arrival<TimeSpan>? arrival) => arrival.Time().TotalHours;
}
