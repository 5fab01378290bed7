using OilCondition.Statistics;

namespace OilCondition.Tests.Statistics;

/// <summary>What is worked out four at once is what each is alone; alone it is held against matrices and published distributions elsewhere.</summary>
public class SideBySideTests
{
    private static readonly double[] Positions = [0, 0.04, 0.21, 0.3, 0.55, 0.56, 0.8, 1];
    private static readonly double[] Values = [3, 3.4, 3.1, 4.4, 4.2, 5.6, 5.1, 7];

    [Fact]
    public void Four_exponentials_are_those_of_the_runtime()
    {
        var found = new double[LaneMath.Width];
        foreach (var x in new[] { -650.0, -31, -1.3, -1e-9, 0, 0.2, 0.7, 25, 640 })
        {
            double[] four = [x, x / 3, -x, 0.999 * x];
            LaneMath.Store(LaneMath.Exp(LaneMath.Load(four, 0)), found, 0);
            for (var i = 0; i < four.Length; i++)
            {
                found[i].ShouldBe(Math.Exp(four[i]), 4e-16 * Math.Exp(four[i]), $"{four[i]}");
            }
        }
    }

    [Fact]
    public void Every_group_of_the_family_has_one_shape_and_every_movement_one_place()
    {
        DegradationPrior
            .Fours.SelectMany(four => four)
            .Order()
            .ShouldBe(Enumerable.Range(0, DegradationPrior.Family.Length));
        foreach (var four in DegradationPrior.Fours.Where(four => four.Length > 1))
        {
            four.Length.ShouldBeLessThanOrEqualTo(LaneMath.Width);
            four.ShouldAllBe(m => FourDesign.AreAlike(DegradationPrior.Family[four[0]], DegradationPrior.Family[m]));
        }
    }

    [Fact]
    public void Clocks_of_four_courses_are_those_of_each()
    {
        foreach (var four in DegradationPrior.Fours)
        {
            Course[] courses = [.. four.Select(m => DegradationPrior.Family[m].Course)];
            var together = new FourCourses(courses);
            foreach (var u in new[] { 0, 0.3, 1, 1.105, 2.7, 80, 1e6 })
            {
                var clocks = together.At(u);
                for (var i = 0; i < courses.Length; i++)
                {
                    var alone = courses[i].At(u);
                    LaneMath.At(clocks, i).ShouldBe(alone, 1e-14 * (1 + Math.Abs(alone)), $"{courses[i]} at {u}");
                }
            }
        }
    }

    [Fact]
    public void Four_movements_read_at_once_are_each_as_alone()
    {
        foreach (var four in DegradationPrior.Fours.Where(four => four.Length > 1))
        {
            Movement[] movements = [.. four.Select(m => DegradationPrior.Family[m])];
            var together = FourDesign.Read(movements, Positions, Values, out var design);
            for (var i = 0; i < four.Length; i++)
            {
                var clock = Array.ConvertAll(Positions, movements[i].Course.At);
                var alone = DegradationMember.Of(movements[i], clock, Values, 0);
                var one = design.Member(together, i, movements[i].Course, 0);
                one.LogLikelihood.ShouldBe(alone.LogLikelihood, 1e-11, $"{movements[i]}");
                one.Level.ShouldBe(alone.Level, 1e-11, $"{movements[i]}");
                one.Drift.ShouldBe(alone.Drift, 1e-11, $"{movements[i]}");
                (one.V0, one.C1, one.C2).ShouldBe((alone.V0, alone.C1, alone.C2), 1e-11);
            }
        }
    }

    [Fact]
    public void Paths_worked_out_at_once_are_each_as_alone()
    {
        var fit = Degradation.Fit(Positions, Values);
        foreach (var (limit, sign) in new[] { (7.5, 1), (9.0, 1), (2.0, -1) })
        {
            foreach (var four in DegradationPrior.Fours)
            {
                PassagePath[] paths =
                [
                    .. four.Select((m, i) => new PassagePath(fit.Member(m), 0.1 + 0.2 * i, limit, sign, 1)),
                ];
                // Seven of them: a full four, and one that is filled up.
                paths = [.. paths, .. paths.Take(3)];
                var together = PassagePathChance.Mixed(null, paths);
                foreach (var time in new[] { 1e-3, 0.4, 3, 200 })
                {
                    var alone = paths.Sum(path => path.Weight * path.At(time, 0.1)) / paths.Sum(path => path.Weight);
                    together.Beyond(time, 0.1).ShouldBe(alone, 1e-10, $"{paths[0].Course} at {time}");
                }
            }
        }
    }
}
