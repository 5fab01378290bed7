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
        As4059.ClassOf(As4059Size.B, 19480, As4059Printing.Exact).ToString().ShouldBe("7");
        As4059.ClassOf(As4059Size.B, 19480, As4059Printing.Rounded).ToString().ShouldBe("6");
        var counts = new Dictionary<As4059Size, double>
        {
            [As4059Size.B] = 38000,
            [As4059Size.C] = 3400,
            [As4059Size.D] = 300,
        };
        As4059.CodeOf(counts, As4059Printing.Exact).ToString().ShouldBe("7B/6C/5D");
        As4059.SpanOf(counts, As4059Printing.Exact).ToString().ShouldBe("7B-D");
        As4059Code.Parse("7B/6C/5D").Compare(As4059Code.Parse("6B-D")).ExceededSizes.ShouldBe([As4059Size.B]);
        var nas = Nas1638.ClassOf(new DifferentialCounts(30000, 5800, 900, 150, 20));
        (nas.Overall.ToString(), nas.DecidingRange).ShouldBe(("8", DifferentialRange.CToD));
        var six = CleanlinessClass.Of(6);
        ClassCorrespondence.ScaleNumbers(As4059Size.B, six, As4059Printing.Exact).ToString().ShouldBe("14-15");
        ClassCorrespondence.Classes(As4059Size.B, 15, As4059Printing.Exact).ToString().ShouldBe("6-7");
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
        KidneyLoopSizing.FlowToHold(640, beta, 5e6).Flow.LitersPerMinute.ShouldBe(7.85, 0.005);
        KidneyLoopSizing.BetaToHold(640, VolumeFlow.FromLitersPerMinute(7.9), 5e6).Beta.ShouldBe(90.3, 0.05);
        KidneyLoopSizing
            .BetaToHold(640, VolumeFlow.FromLitersPerMinute(7.8), 5e6)
            .Outcome.ShouldBe(RequirementOutcome.OutOfReach);
        KidneyLoopSizing
            .FlowToReach(20000, 1000, TimeSpan.FromMinutes(100), Volume.FromLiters(1000), beta, 0)
            .Flow.LitersPerMinute.ShouldBe(30.1, 0.05);
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
