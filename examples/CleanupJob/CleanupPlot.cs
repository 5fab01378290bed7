using OilCondition.Cleanup;
using OilCondition.Treatment;
using OilCondition.Water;
using ScottPlot;

namespace CleanupJob;

/// <summary>The plan's curve beside the observed one.</summary>
public static class CleanupPlot
{
    public static void Write(string path, PurificationPlan plan, IEnumerable<CleanupReading> log, CleanupStatus status)
    {
        Fonts.Default = "DejaVu Sans";
        using var plot = new Plot();
        var readings = log.Select(one =>
                (
                    Hour: (one.At - Job.StartedAt).TotalHours,
                    State: plan.Job.Oil.SaturationCurve.FromSensor(
                        one.RelativeSaturation!.Value,
                        one.Temperature!.Value
                    )
                )
            )
            .ToList();

        void Dots(string name, WaterKnowledge knowledge, Color color)
        {
            var some = readings.Where(one => one.State.Knowledge == knowledge).ToList();
            var dots = plot.Add.ScatterPoints(
                some.Select(one => one.Hour).ToArray(),
                some.Select(one => one.State.Total.PartsPerMillion).ToArray(),
                color
            );
            dots.LegendText = name;
            dots.MarkerSize = 4;
        }

        void Curve(string name, double[] hours, double[] ppm, Color color)
        {
            var line = plot.Add.ScatterLine(hours, ppm, color);
            line.LegendText = name;
            line.LineWidth = 2;
        }

        Curve(
            "planned, all water",
            plan.States.Select(one => one.Time.TotalHours).ToArray(),
            plan.States.Select(one => one.Water.Total.PartsPerMillion).ToArray(),
            Colors.SteelBlue
        );
        Dots("sensor at saturation: this or more", WaterKnowledge.AtLeast, Colors.Gray);
        Dots("sensor, dissolved water", WaterKnowledge.Dissolved, Colors.DarkOrange);
        var leaking = StalledRun.Log().Where((_, i) => i % 6 == 0).ToList();
        var stalled = plot.Add.ScatterPoints(
            leaking.Select(one => (one.At - Job.StartedAt).TotalHours).ToArray(),
            leaking
                .Select(one =>
                    plan.Job.Oil.SaturationCurve.FromSensor(
                        one.RelativeSaturation!.Value,
                        one.Temperature!.Value
                    ).Total.PartsPerMillion
                )
                .ToArray(),
            Colors.Purple
        );
        stalled.LegendText = "had the cooler gone on leaking (stalled)";
        stalled.MarkerSize = 4;
        var curve = status.Curve;
        if (curve.HasCurve)
        {
            var from = (curve.FirstReadingAt - Job.StartedAt).TotalHours;
            var to = (status.AsOf - Job.StartedAt).TotalHours;
            double[] hours = [.. Enumerable.Range(0, 101).Select(i => from + (to - from) * i / 100)];
            Curve(
                "fitted fall",
                hours,
                [.. hours.Select(hour => curve.ValueAt(Job.StartedAt.AddHours(hour)))],
                Colors.Red
            );
        }

        var target = plot.Add.HorizontalLine(status.Options.Target!.Value, 1, Colors.Green, LinePattern.Dashed);
        target.LegendText = FormattableString.Invariant($"target {status.Options.Target!.Value:0} mg/kg");
        plot.Title("Water in HP-TGB1 during its cleanup (INVENTED station Harrow Point)");
        plot.XLabel("hours from the start");
        plot.YLabel("water, mg/kg");
        plot.ShowLegend(Alignment.UpperRight);
        plot.Axes.SetLimits(0, 62, 0, 950);
        plot.SavePng(path, 1000, 600);
    }
}
