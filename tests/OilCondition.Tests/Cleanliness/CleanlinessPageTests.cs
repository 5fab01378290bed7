using OilCondition.Cleanliness;
using OilCondition.Tests.Architecture;
using UnitsNet;

namespace OilCondition.Tests.Cleanliness;

/// <summary>The calls and figures of docs/cleanliness.md: this test prints what the page says.</summary>
public class CleanlinessPageTests
{
    [Fact]
    public void Classes_are_as_the_page_has_them()
    {
        As4059.Exact.ClassOf(As4059Size.B, 19480).ToString().ShouldBe("7");
        As4059.Rounded.ClassOf(As4059Size.B, 19480).ToString().ShouldBe("6");
        var counts = new Dictionary<As4059Size, double>
        {
            [As4059Size.B] = 38000,
            [As4059Size.C] = 3400,
            [As4059Size.D] = 300,
        };
        As4059.Exact.CodeOf(counts).ToString().ShouldBe("7B/6C/5D");
        As4059.Exact.SpanOf(counts).ToString().ShouldBe("7B-D");
        As4059Code.Parse("7B/6C/5D").ExceededSizes(As4059Code.Parse("6B-D")).ShouldBe([As4059Size.B]);
        var nas = new DifferentialCounts(30000, 5800, 900, 150, 20);
        (nas.Class.ToString(), nas.DecidingSize).ShouldBe(("8", As4059Size.C));
        var six = CleanlinessClass.Of(6);
        ClassCorrespondence.ScaleNumbers(As4059Size.B, six, As4059.Exact).ToString().ShouldBe("14-15");
        ClassCorrespondence.Classes(As4059Size.B, 15, As4059.Exact).ToString().ShouldBe("6-7");
        string.Join(" and ", ClassCorrespondence.Printed(six).Select(one => one.Code))
            .ShouldBe("17/15/12 and 16/14/11");
    }

    [Fact]
    public void Sizes_and_loops_are_as_the_page_has_them()
    {
        ParticleSizes.AcftdToMicrometresC(22).ShouldBe(18.98, 0.005);
        ParticleSizes.MicrometresBToMicrometresC(10).ShouldBe(8.98, 0.005);
        new SizeDistribution([4, 6], [2000, 500]).PerMillilitreAt(5).ShouldBe(933, 0.5);
        var beta = new FilterBeta(200);
        KidneyLoop.TryFlowToHold(640, beta, 5e6, out var hold).ShouldBeTrue();
        hold.LitersPerMinute.ShouldBe(7.85, 0.005);
        KidneyLoop.TryBetaToHold(640, VolumeFlow.FromLitersPerMinute(7.9), 5e6, out var ratio).ShouldBeTrue();
        ratio.ShouldBe(90.3, 0.05);
        KidneyLoop.TryBetaToHold(640, VolumeFlow.FromLitersPerMinute(7.8), 5e6, out _).ShouldBeFalse();
        var (oil, time) = (Volume.FromLiters(1000), TimeSpan.FromMinutes(100));
        KidneyLoop.TryFlowToReach(20000, 1000, time, oil, beta, 0, out var reach).ShouldBeTrue();
        reach.LitersPerMinute.ShouldBe(30.1, 0.05);
    }

    [Fact]
    public void The_file_of_target_codes_on_the_page_is_read()
    {
        var page = RepositoryFiles.Read("docs", "cleanliness.md");
        var start = page.IndexOf("```json", StringComparison.Ordinal) + "```json".Length;
        var set = TargetCodeSet.Parse(page[start..page.IndexOf("```", start, StringComparison.Ordinal)]);

        set.Targets.Single().Loosest.ToString().ShouldBe("16/14/11");
    }
}
