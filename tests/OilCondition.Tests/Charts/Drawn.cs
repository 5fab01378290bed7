extern alias charts;

using charts::OilCondition.Charts;
using charts::OilCondition.Charts.Drawing;
using OilCondition.Limits;
using OilCondition.Tests.Sampling;
using UnitsNet;

namespace OilCondition.Tests.Charts;

/// <summary>Small invented machines whose charts are drawn.</summary>
internal static class Drawn
{
    public static readonly Source AnySource = Source.UserData("invented");

    public static Limit Above(Measurand measurand, double? alert, double? alarm) =>
        new(measurand, LimitKind.Absolute, new LimitBand(alert, alarm), null, AnySource);

    public static Limit Below(Measurand measurand, double? alert, double? alarm) =>
        new(measurand, LimitKind.Absolute, null, new LimitBand(alert, alarm), AnySource);

    public static Machine Machine(string id = "M1", string name = "invented machine", Oil? oil = null) =>
        new(
            id,
            name,
            oil ?? Invented.Oil,
            Volume.FromLiters(1000),
            Temperature.FromDegreesCelsius(60),
            Temperature.FromDegreesCelsius(20)
        );

    /// <summary>An assessment of readings of one measurand, as many days after the start of the records.</summary>
    public static ConditionAssessment Assess(
        Measurand measurand,
        IEnumerable<(double Days, Reading Reading)> readings,
        IReadOnlyList<Limit> limits,
        double? nowDays = null,
        Machine? machine = null,
        params OilEvent[] events
    )
    {
        var samples = readings.Select((one, i) => Invented.Sample(i, one.Days, (measurand, one.Reading))).ToList();
        var history = OilHistory.Create(machine ?? Machine(), samples, [], events);
        var now =
            nowDays is { } days ? Invented.Start.AddDays(days)
            : samples.Count > 0 ? samples.Max(sample => sample.TakenAt)
            : Invented.Start;
        return ConditionAssessor.Assess(history, new LimitSet("invented", limits), new AssessmentOptions(now));
    }

    /// <summary>Monthly acid numbers that rise by 0.01 a month from 0.1 on, with a scatter of half a hundredth.</summary>
    public static ConditionAssessment Rising(double alarm = 0.4, Machine? machine = null, params OilEvent[] events) =>
        Assess(
            Measurands.AcidNumber,
            Enumerable
                .Range(0, 13)
                .Select(i => (30.0 * i, new Reading(0.1 + 0.01 * i + (i % 2 == 0 ? 0.004 : -0.004)))),
            [Above(Measurands.AcidNumber, 0.75 * alarm, alarm)],
            nowDays: 365,
            machine,
            events
        );

    public static IEnumerable<T> Layers<T>(this Chart chart)
        where T : Layer => chart.Scene.Layers.OfType<T>();

    public static T Layer<T>(this Chart chart, string key)
        where T : Layer => chart.Layers<T>().Single(layer => layer.Key == key);

    /// <summary>The words on the sheet, in the order of reading.</summary>
    public static IReadOnlyList<string> Words(this Chart chart) =>
        [.. new Sheet(chart.Scene, chart.Width, chart.Height).Texts.Select(text => text.Text)];

    public static double Day(DateTimeOffset at) => TimeAxis.Days(at, TimeSpan.Zero);
}
