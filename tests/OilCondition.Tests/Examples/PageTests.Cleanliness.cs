using OilCondition.Cleanliness;
using OilCondition.Tests.Architecture;
using UnitsNet;

namespace OilCondition.Tests.Examples;

/// <summary>The snippets of docs/cleanliness.md, and the figures that stand beside them.</summary>
public partial class PageTests
{
    [Fact]
    public void Cleanliness_codes()
    {
        var volume = Volume.FromMilliliters(10);
        var code = CleanlinessCode.FromCounts(
            new ParticleCount(1000, volume),
            new ParticleCount(300, volume),
            new ParticleCount(7, volume)
        );
        code.ToString(); // 14/12/≥7
        code.Compare(CleanlinessCode.Parse("14/12/9")); // MetOnFewCounted

        code.ToString().ShouldBe("14/12/≥7");
        code.Compare(CleanlinessCode.Parse("14/12/9")).ShouldBe(TargetOutcome.MetOnFewCounted);
        TargetCodes(code);
    }

    private static void TargetCodes(CleanlinessCode code)
    {
        var File = new FileIn(Directory.CreateTempSubdirectory("page-tests-").FullName);
        var page = RepositoryFiles.Read("docs", "cleanliness.md");
        File.WriteAllText("our-targets.json", page.Split("```json\n")[1].Split("```")[0]);

        if (TargetCodeSet.StarterSet.TryFind("servo valve", out var servo)) // 14/12/9 to 16/14/11
        {
            code.Compare(servo.Loosest);
        }

        var ours = TargetCodeSet.Parse(File.ReadAllText("our-targets.json"));

        servo!.Loosest.ToString().ShouldBe("16/14/11");
        ours.Targets.Count.ShouldBe(1);
    }

    [Fact]
    public void Counting_statistics()
    {
        var laterCount = new ParticleCount(60, Volume.FromMilliliters(10));

        var count = new ParticleCount(20, Volume.FromMilliliters(10));
        count.Interval(0.95); // 12.2 to 30.9 particles
        count.ScaleNumbers(0.95); // 7-9
        count.ChanceOfEqualOil(laterCount); // below 0.05: they differ at a confidence of 0.95

        count.Interval(0.95).Lower.ShouldBe(12.2, 0.05);
        count.Interval(0.95).Upper.ShouldBe(30.9, 0.05);
        count.ScaleNumbers(0.95).ToString().ShouldBe("7-9");
        count.ChanceOfEqualOil(laterCount).ShouldBeLessThan(0.05);
    }

    /// <summary>Their figures are held by the tests of the room.</summary>
    [Fact]
    public void Classes_sizes_and_loops()
    {
        As4059.Exact.ClassOf(As4059Size.B, 19480).ToString(); // 7
        As4059.Rounded.ClassOf(As4059Size.B, 19480).ToString(); // 6
        var counts = new Dictionary<As4059Size, double>
        {
            [As4059Size.B] = 38000,
            [As4059Size.C] = 3400,
            [As4059Size.D] = 300, // per 100 mL
        };
        As4059.Exact.CodeOf(counts).ToString(); // 7B/6C/5D
        As4059.Exact.SpanOf(counts).ToString(); // 7B-D
        As4059Code.Parse("7B/6C/5D").Compare(As4059Code.Parse("6B-D")); // Exceeded; ExceededSizes says B
        new DifferentialCounts(30000, 5800, 900, 150, 20).Class.ToString(); // NAS 1638: 8, for 15 to 25 µm

        ClassCorrespondence.ScaleNumbers(As4059Size.B, CleanlinessClass.Of(6), As4059.Exact).ToString(); // 14-15
        ClassCorrespondence.Classes(As4059Size.B, 15, As4059.Exact).ToString(); // 6-7
        ClassCorrespondence.Printed(CleanlinessClass.Of(6)); // 17/15/12 and 16/14/11

        ParticleSizes.AcftdToMicrometresC(22); // 18.98
        ParticleSizes.MicrometresBToMicrometresC(10); // 8.98
        new SizeDistribution([4, 6], [2000, 500]).PerMillilitreAt(5); // 933 per mL

        var loop = new KidneyLoop(
            Volume.FromLiters(1000),
            VolumeFlow.FromLitersPerMinute(20),
            new FilterBeta(200),
            5e6
        );
        var steady = loop.SteadyPerMillilitre; // 251 per mL
        loop.TimeTo(20000, 1000); // expected 2.74 h

        KidneyLoop.TryFlowToHold(640, new FilterBeta(200), 5e6, out var holding); // 7.85 L/min
        KidneyLoop.TryBetaToHold(640, VolumeFlow.FromLitersPerMinute(7.9), 5e6, out var beta); // 90.3
        KidneyLoop.TryBetaToHold(640, VolumeFlow.FromLitersPerMinute(7.8), 5e6, out beta); // false: no filter is enough
        KidneyLoop.TryFlowToReach(
            20000,
            1000,
            TimeSpan.FromMinutes(100),
            Volume.FromLiters(1000),
            new FilterBeta(200),
            0,
            out var reaching
        ); // 30.1 L/min

        steady.ShouldBe(251, 0.5);
        $"{loop.TimeTo(20000, 1000)}".ShouldContain("2.74 h");
        holding.LitersPerMinute.ShouldBe(7.85, 0.005);
        reaching.LitersPerMinute.ShouldBe(30.1, 0.05);
    }

    [Fact]
    public void Whole_codes_in_a_loop()
    {
        var oil = Volume.FromLiters(1000);
        var flow = VolumeFlow.FromLitersPerMinute(20);
        var loops = new KidneyLoopSizes(
            new KidneyLoop(oil, flow, new FilterBeta(20), 2e7),
            new KidneyLoop(oil, flow, new FilterBeta(100), 5e6),
            new KidneyLoop(oil, flow, new FilterBeta(1000), 4e5)
        );
        loops.SteadyCode.ToString(); // 17/15/12
        var (time, rulingSize) = loops.TimeTo(CleanlinessCode.Parse("21/19/16"), CleanlinessCode.Parse("18/16/13"));
        var holds = loops.Holds(CleanlinessCode.Parse("18/16/13"));

        loops.SteadyCode.ToString().ShouldBe("17/15/12");
        time.ShouldBeOfType<Arrival<TimeSpan>.Expected>();
        rulingSize.ShouldBe(CodeSize.At4);
        holds.ShouldBeTrue();
    }
}
