using OilCondition.Cleanliness;
using UnitsNet;

namespace DeskCalculations;

/// <summary>Codes and what they rest on, classes of other standards, and what a filter in a kidney loop does.</summary>
internal static class Particles
{
    public static void Write(Sheet sheet)
    {
        sheet.Topic("Cleanliness");
        Codes(sheet);
        Classes(sheet);
        Loop(sheet);
        sheet.Line("caution", "a hot line under pressure is no sampling point: sample from a proper valve");
    }

    private static void Codes(Sheet sheet)
    {
        var volume = Volume.FromMilliliters(10);
        ParticleCount[] counts = [new(1000, volume), new(300, volume), new(20, volume)];
        var code = CleanlinessCode.FromCounts(counts[0], counts[1], counts[2]);
        sheet.Line("counts give the code", code);
        sheet.Line("at 14 µm(c)", counts[2]);
        var interval = counts[2].Interval(0.95);
        sheet.Line("  95 % by counting alone", $"{interval.Lower:0.0} to {interval.Upper:0.0} particles");
        sheet.Line("  in scale numbers", counts[2].ScaleNumbers(0.95));
        sheet.Line(
            "  chance of 30 in the same oil",
            $"{counts[2].ChanceOfEqualOil(new ParticleCount(30, volume)):0.00}"
        );
        sheet.Line("a typical count of number 14", $"{Iso4406.TypicalCountPerMillilitre(14):0} per mL");
        var sizes = new SizeDistribution([4, 6, 14], [100, 30, 2]);
        sheet.Line("sizes", sizes);
        sheet.Line("  at 10 µm(c)", $"{sizes.PerMillilitreAt(10):0.0} per mL");
        sheet.Line("10 µm by the older calibration", $"{ParticleSizes.AcftdToMicrometresC(10):0.0} µm(c)");
        if (TargetCodeSet.StarterSet.TryFind("servo valve", out var servo))
        {
            sheet.Line("usual target, no source", servo);
            sheet.Line("  our code beside the loosest", code.Compare(servo.Loosest));
            if (code.TryWorstExcess(servo.Strictest, out var excess))
            {
                sheet.Line("  above the strictest by", $"{excess} at the worst size");
            }
        }
    }

    private static void Classes(Sheet sheet)
    {
        var counts = new Dictionary<As4059Size, double>
        {
            [As4059Size.B] = 38000,
            [As4059Size.C] = 3400,
            [As4059Size.D] = 300,
        };
        var code = As4059.Exact.CodeOf(counts);
        sheet.Line($"{As4059.Exact}", code);
        sheet.Line($"{As4059.Rounded}, worst", As4059.Rounded.SpanOf(counts));
        sheet.Line("  beside 6B-D", code.Compare(As4059Code.Parse("6B-D")));
        sheet.Line("NAS 1638 of differential counts", new DifferentialCounts(30000, 5800, 900, 150, 20));
        var six = CleanlinessClass.Of(6);
        sheet.Line("class 6 at 6 µm(c) may be", ClassCorrespondence.ScaleNumbers(As4059Size.B, six, As4059.Exact));
        foreach (var (printed, by) in ClassCorrespondence.Printed(six))
        {
            sheet.Line($"  {printed} is printed by", by.Text.Split(',')[0].Split(" on ")[0]);
        }
    }

    private static void Loop(Sheet sheet)
    {
        var oil = Volume.FromLiters(1000);
        var flow = VolumeFlow.FromLitersPerMinute(20);
        var loop = new KidneyLoop(oil, flow, new FilterBeta(200), 5e6);
        sheet.Line("kidney loop", loop);
        var time = loop.TimeTo(20000, 1000);
        sheet.Line("  20000 to 1000 per mL", time);
        if (time.TryEstimate(out var span))
        {
            sheet.Line("  turnovers", $"{loop.Turnovers(span):0.0}");
        }

        sheet.Line("  to 250 per mL", loop.TimeTo(20000, 250));
        KidneyLoop.TryFlowToHold(640, loop.Filter, 5e6, out var hold);
        sheet.Line("flow that holds 640 per mL", $"{hold.LitersPerMinute:0.00} L/min");
        sheet.Line(
            "filter for 7.8 L/min",
            KidneyLoop.TryBetaToHold(640, VolumeFlow.FromLitersPerMinute(7.8), 5e6, out var beta)
                ? FormattableString.Invariant($"β {beta:0}")
                : "none is enough: more flow"
        );
        var loops = new KidneyLoopSizes(
            new KidneyLoop(oil, flow, new FilterBeta(20), 2e7),
            new KidneyLoop(oil, flow, new FilterBeta(100), 5e6),
            new KidneyLoop(oil, flow, new FilterBeta(1000), 4e5)
        );
        sheet.Line("all three sizes", loops);
        var (arrival, size) = loops.TimeTo(CleanlinessCode.Parse("21/19/16"), CleanlinessCode.Parse("18/16/13"));
        sheet.Line(
            "  21/19/16 to 18/16/13",
            $"{arrival}, the slowest at {(size == CodeSize.At4 ? 4 : size == CodeSize.At6 ? 6 : 14)} µm(c)"
        );
    }
}
