using OilCondition.Text;

namespace OilCondition.Tests.Text;

/// <summary>Spans of time from figures, to the tick of 100 ns.</summary>
public class ElapsedTests
{
    [Fact]
    public void A_figure_is_kept_to_the_tick()
    {
        Elapsed.FromSeconds(1.5e-6).Ticks.ShouldBe(15);
        Elapsed.FromMinutes(0.5).ShouldBe(new TimeSpan(0, 0, 30));
        Elapsed.FromHours(1.5).ShouldBe(new TimeSpan(1, 30, 0));
        Elapsed.FromDays(-1.25).ShouldBe(new TimeSpan(-1, -6, 0, 0));
    }

    [Fact]
    public void What_no_span_can_hold_is_the_longest_and_no_number_is_refused()
    {
        Elapsed.FromHours(1e300).ShouldBe(TimeSpan.MaxValue);
        Elapsed.FromHours(-1e300).ShouldBe(TimeSpan.MinValue);
        Elapsed.FromDays(10_675_200).ShouldBe(TimeSpan.MaxValue);
        Should.Throw<ArgumentOutOfRangeException>(() => Elapsed.FromHours(double.NaN));
    }
}
