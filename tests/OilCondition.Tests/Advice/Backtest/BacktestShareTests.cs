namespace OilCondition.Tests.Advice;

/// <summary>Clopper and Pearson's ends are those at which the count seen, or a more extreme one, has half of what the confidence leaves open.</summary>
public class BacktestShareTests
{
    private const double Tail = 0.05;

    [Theory]
    [InlineData(5, 8)]
    [InlineData(1, 5)]
    [InlineData(17, 20)]
    public void The_ends_leave_a_tail_of_the_binomial_distribution_each(int part, int count)
    {
        var interval = new BacktestShare(part, count, 0.9).Interval;

        AtLeast(part, count, interval.Lower!.Value).ShouldBe(Tail, 1e-6);
        (1 - AtLeast(part + 1, count, interval.Upper!.Value)).ShouldBe(Tail, 1e-6);
    }

    /// <summary>Closed forms of the ends of none and of all.</summary>
    [Fact]
    public void None_and_all()
    {
        var none = new BacktestShare(0, 5, 0.9).Interval;
        var all = new BacktestShare(5, 5, 0.9).Interval;

        none.Lower.ShouldBe(0);
        none.Upper!.Value.ShouldBe(1 - Math.Pow(Tail, 0.2), 1e-9);
        all.Lower!.Value.ShouldBe(Math.Pow(Tail, 0.2), 1e-9);
        all.Upper.ShouldBe(1);
    }

    [Fact]
    public void A_fraction_has_the_wider_ends()
    {
        var interval = new BacktestShare(3.4, 5, 0.9).Interval;

        AtLeast(3, 5, interval.Lower!.Value).ShouldBe(Tail, 1e-6);
        (1 - AtLeast(5, 5, interval.Upper!.Value)).ShouldBe(Tail, 1e-6);
    }

    [Fact]
    public void Thirds_that_make_a_whole_count_as_one() =>
        new BacktestShare(1.0 / 3 + 1.0 / 3 + 1.0 / 3 + 1e-12, 2, 0.9).Part.ShouldBe(1);

    [Fact]
    public void Of_none_there_is_no_share()
    {
        var share = new BacktestShare(0, 0, 0.9);

        share.Share.ShouldBeNull();
        share.Interval.Lower.ShouldBeNull();
        share.ToString().ShouldBe("none");
    }

    [Fact]
    public void It_prints_count_share_and_interval() =>
        new BacktestShare(5, 8, 0.9).ToString().ShouldBe("5 of 8, 63 % (29 to 89 %)");

    private static double AtLeast(int part, int count, double chance)
    {
        double sum = 0;
        for (var i = part; i <= count; i++)
        {
            double ways = 1;
            for (var k = 1; k <= i; k++)
            {
                ways *= (double)(count - i + k) / k;
            }

            sum += ways * Math.Pow(chance, i) * Math.Pow(1 - chance, count - i);
        }

        return sum;
    }
}
