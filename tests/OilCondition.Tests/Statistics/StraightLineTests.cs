using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

public class StraightLineTests
{
    [Fact]
    public void Crossing_at_even_chance_is_where_the_line_meets_the_limit()
    {
        double[] x = [0, 1, 2, 3, 4, 5];
        double[] y = [1.0, 2.1, 2.9, 4.2, 4.8, 6.1];
        var fit = StraightLine.Fit(x, y);

        fit.TryCrossing(10, 0.5, BandKind.NewReading, out var position).ShouldBeTrue();
        fit.ValueAt(position).ShouldBe(10, 1e-9);
    }

    [Theory]
    [InlineData(0.05, BandKind.NewReading)]
    [InlineData(0.1, BandKind.Mean)]
    [InlineData(0.9, BandKind.NewReading)]
    [InlineData(0.95, BandKind.Mean)]
    public void At_the_crossing_the_chance_is_the_one_asked_for(double chance, BandKind of)
    {
        double[] x = [0, 1, 2, 3, 4, 5, 7];
        double[] y = [1.3, 1.9, 3.2, 4.1, 4.7, 6.4, 7.8];
        var fit = StraightLine.Fit(x, y);

        fit.TryCrossing(12, chance, of, out var position).ShouldBeTrue();
        fit.ChanceAbove(position, 12, of).ShouldBe(chance, 1e-9);
    }

    [Fact]
    public void A_slope_lost_in_scatter_has_an_early_end_and_no_late_end()
    {
        double[] x = [0, 1, 2, 3, 4, 5];
        double[] y = [3, 5, 2, 6, 3, 5];
        var fit = StraightLine.Fit(x, y);

        fit.TryCrossing(20, 0.05, BandKind.Mean, out var early).ShouldBeTrue();
        fit.ChanceAbove(early, 20, BandKind.Mean).ShouldBe(0.05, 1e-9);
        fit.TryCrossing(20, 0.95, BandKind.Mean, out _).ShouldBeFalse();
    }

    [Fact]
    public void A_falling_line_never_crosses_upwards() =>
        StraightLine.Fit([0, 1, 2, 3], [9, 7, 6, 4]).TryCrossing(20, 0.5, BandKind.Mean, out _).ShouldBeFalse();

    [Fact]
    public void Unit_of_time_and_a_shift_of_the_clock_change_nothing_but_the_unit()
    {
        double[] days = [0, 31, 58, 90, 125, 170];
        double[] y = [10, 14, 13, 19, 22, 24];
        var fit = StraightLine.Fit(days, y);
        var shiftedHours = StraightLine.Fit([.. days.Select(d => 24 * d + 1e6)], y);

        shiftedHours.Slope.ShouldBe(fit.Slope / 24, 1e-12);
        shiftedHours.ValueAt(24 * 200 + 1e6).ShouldBe(fit.ValueAt(200), 1e-8);
        shiftedHours.SlopePValue.ShouldBe(fit.SlopePValue, 1e-9);
    }

    [Fact]
    public void Too_few_points_and_one_position_are_named()
    {
        StraightLine.Fit([1, 2], [1, 2]).Status.ShouldBe(LineStatus.TooFewReadings);
        StraightLine.Fit([], []).Status.ShouldBe(LineStatus.TooFewReadings);
        StraightLine.Fit([5, 5, 5], [1, 2, 3]).Status.ShouldBe(LineStatus.SamePosition);
        Should.Throw<InvalidOperationException>(() => StraightLine.Fit([1, 2], [1, 2]).ValueAt(0));
    }
}
