using MathNet.Numerics.Distributions;
using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>The quick sums held against the incomplete beta function of MathNet.Numerics.</summary>
public class StudentDistributionTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(7)]
    [InlineData(10)]
    [InlineData(61)]
    [InlineData(400)]
    public void A_tail_has_its_digits_however_small_it_is(int degreesOfFreedom)
    {
        foreach (var t in new[] { 0, 0.3, 1.9, -2.2, 4, 5.5, 9, 40, 300 })
        {
            var tail = 2 * StudentT.CDF(0, 1, degreesOfFreedom, -Math.Abs(t));
            StudentDistribution.TwoSidedTail(t, degreesOfFreedom).ShouldBe(tail, 1e-9 * tail, $"{t}");
        }
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(9)]
    [InlineData(200)]
    [InlineData(300)]
    public void Four_distances_at_once_have_the_chance_of_each(int degreesOfFreedom)
    {
        var student = StudentSeries.For(degreesOfFreedom);
        var found = new double[LaneMath.Width];
        foreach (var size in new[] { 1e-30, 1e-4, 1, 1e7, 1e100 })
        {
            double[] gaps = [-3 * size, 0, 0.4 * size, 8 * size];
            LaneMath.Store(student.Beyond(LaneMath.Load(gaps, 0), LaneMath.Of(size * size)), found, 0);
            for (var i = 0; i < gaps.Length; i++)
            {
                found[i].ShouldBe(StudentT.CDF(0, 1, degreesOfFreedom, -gaps[i] / size), 1e-12, $"{gaps[i]}");
            }
        }
    }

    /// <summary>With one degree of freedom it is Cauchy's, 1/2 − arctan(gap/σ)/π, so that the series of the arctangent is held to its last bits.</summary>
    [Fact]
    public void One_degree_of_freedom_is_an_arctangent()
    {
        var student = StudentSeries.For(1);
        var found = new double[LaneMath.Width];
        for (var i = -60; i <= 60; i++)
        {
            // On both sides of 1, where tangent and cotangent meet, and at 1 itself.
            var gap = Math.Sign(i) * Math.Pow(1.15, Math.Abs(i) - 30);
            var four = student.Beyond(LaneMath.Of(gap, 1, -1, 0), LaneMath.Of(1));
            LaneMath.Store(four, found, 0);
            found[0].ShouldBe(0.5 - Math.Atan(gap) / Math.PI, 3e-16, $"{gap}");
            found[1].ShouldBe(0.25, 3e-16);
            found[2].ShouldBe(0.75, 3e-16);
            found[3].ShouldBe(0.5, 0);
        }
    }

    [Fact]
    public void Without_a_variance_a_distance_alone_decides()
    {
        var found = new double[LaneMath.Width];
        var beyond = StudentSeries
            .For(6)
            .Beyond(LaneMath.Load([-1, 0, 1e-9, 1e150], 0), LaneMath.Load([0, 0, 0, 1], 0));
        LaneMath.Store(beyond, found, 0);
        found.ShouldBe([1, 1, 0, 0], 1e-15);
    }
}
