using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>What series of the same dates share changes nothing that is said of any of them.</summary>
public class SharedDesignTests
{
    private static readonly double[] Days = [0, 31, 62, 88, 120, 155, 181, 214, 240, 275, 300, 333];
    private static readonly double[] OtherDays = [0, 20, 62, 88, 120, 155, 181, 214, 240, 275, 300, 340];

    [Fact]
    public void Forecasts_over_the_same_dates_are_each_as_alone()
    {
        var shared = new FamilyDesigns();
        foreach (var (days, seed) in new[] { (Days, 1), (Days, 2), (OtherDays, 3), (Days, 4), (Days, 1) })
        {
            var values = Drawn(days, seed);
            foreach (var error in new[] { 0, 0.4 })
            {
                var together = Degradation.Fit(days, values, readingError: error, designs: shared);
                var alone = Degradation.Fit(days, values, readingError: error);
                together.Weights.ShouldBe(alone.Weights, 1e-15);
                together.Above(20, 5000).ChanceBefore(400).ShouldBe(alone.Above(20, 5000).ChanceBefore(400), 1e-15);
            }
        }
    }

    [Fact]
    public void Trends_over_the_same_dates_are_each_as_alone()
    {
        using var shared = new RiseDesigns();
        foreach (var (days, seed) in new[] { (Days, 1), (Days, 2), (OtherDays, 3), (Days, 4), (OtherDays, 1) })
        {
            // With and without a season in turns: one must not pass for the other.
            Same(shared.Of(days, null), new RiseDesign(days), Drawn(days, seed));
            Same(shared.Of(days, null).InDoubtOf(365.25), new RiseDesign(days).InDoubtOf(365.25), Drawn(days, seed));
            Same(shared.Of(days, 100), new RiseDesign(days, 100), Drawn(days, seed));
            Same(shared.Of(days, null).InDoubtOf(100), new RiseDesign(days).InDoubtOf(100), Drawn(days, seed));
            Same(shared.Of(days, 365.25), new RiseDesign(days, 365.25), Drawn(days, seed));
            Same(shared.Of(days, null), new RiseDesign(days), Drawn(days, seed));
        }
    }

    private static void Same(RiseDesign shared, RiseDesign own, double[] values)
    {
        var together = CorrelatedRise.Of(shared, values, 0, new double[CorrelatedRise.Room]);
        var alone = CorrelatedRise.Of(own, values, 0, new double[CorrelatedRise.Room]);
        shared.DegreesOfFreedom.ShouldBe(own.DegreesOfFreedom);
        together.Rise.ShouldBe(alone.Rise, 1e-15);
        together.Quantile(0.9).ShouldBe(alone.Quantile(0.9), 1e-15);
        own.Release();
    }

    [Fact]
    public void Other_dates_have_a_design_of_their_own()
    {
        using var rises = new RiseDesigns();
        var one = rises.Of(Days, null);
        var season = one.InDoubtOf(365.25);
        rises.Of(Days, 365.25).ShouldNotBeSameAs(season);
        rises.Of([.. Days], null).ShouldBeSameAs(one);
        one.InDoubtOf(365.25).ShouldBeSameAs(season);
        rises.Of(OtherDays, null).ShouldNotBeSameAs(one);
    }

    private static double[] Drawn(double[] days, int seed)
    {
        var random = new Random(seed);
        return [.. days.Select(day => 5 + 0.01 * seed * day + DecayNoiseSource.Normal(random))];
    }
}
