using System.Xml;
using System.Xml.Linq;
using OilCondition.Reporting;
using OilCondition.Tests.Advice;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Reporting;

/// <summary>Pages of invented fleets, and the means to look into them.</summary>
internal static class ReportPages
{
    /// <summary>Names that would change a page if they were not written as texts.</summary>
    public static readonly string[] OddNames =
    [
        "P-1 <b>&\"'</b>",
        "HP/GOV|2 *x* _y_ [z](q) `c`",
        "\u202Egnippilf\u2066 \u200Fright\u061C",
        "M" + new string('9', 240),
        "line\nfeed\tand # heading",
        "{{ title }} {count} </style><script>alert(1)</script>",
    ];

    /// <summary>Machines in all states, among them one that was never sampled and one with nothing to say.</summary>
    public static IReadOnlyList<ConditionAssessment> Fleet(int machines, IReadOnlyList<string>? names = null) =>
        [
            .. Enumerable
                .Range(0, machines)
                .Select(seed =>
                {
                    var drawn = new InventedHistories(seed);
                    var name = names?[seed % names.Count] ?? $"invented machine {seed}";
                    var machine = new Machine(
                        names is null
                            ? $"M{seed}"
                            : $"{seed} {string.Concat(name.Where(letter => !char.IsControl(letter)))}",
                        name,
                        new Oil(name, Invented.Machine.Oil.NewReadings, Invented.Machine.Oil.SaturationCurve),
                        Invented.Machine.ChargeVolume,
                        Invented.Machine.RunningTemperature,
                        Invented.Machine.StandstillTemperature
                    );
                    var history =
                        seed % 7 == 3 ? OilHistory.Create(machine, [], [], [])
                        : seed % 7 == 6
                            ? OilHistory.Create(
                                machine,
                                [
                                    // Dirt beyond its alert limit that grows towards the alarm of 10,000 per mL, faster for a later machine.
                                    .. Enumerable
                                        .Range(0, 12)
                                        .Select(i =>
                                            Invented.Sample(
                                                i,
                                                (drawn.End - Invented.Start).TotalDays - 330 + 30 * i,
                                                (
                                                    Measurands.Particles4,
                                                    new Reading(
                                                        2600 * Math.Pow(1.1 + 0.0005 * seed, i) * (1 + 0.01 * (i % 2))
                                                    )
                                                )
                                            )
                                        ),
                                ],
                                [],
                                []
                            )
                        : seed % 7 == 5
                            ? OilHistory.Create(
                                machine,
                                [
                                    .. Enumerable
                                        .Range(0, 6)
                                        .Select(i =>
                                            Invented.Sample(
                                                i,
                                                (drawn.End - Invented.Start).TotalDays - 60 + 10 * i,
                                                (Measurands.WaterContent, new Reading(40 + i % 2))
                                            )
                                        ),
                                ],
                                [],
                                []
                            )
                        : OilHistory.Create(machine, drawn.Samples, drawn.Sensors, drawn.Events);
                    return ConditionAssessor.Assess(
                        history,
                        InventedHistories.Limits,
                        new AssessmentOptions(drawn.End.AddDays(seed % 30))
                    );
                }),
        ];

    /// <summary>A page as XML, which it is as well: every element is closed.</summary>
    public static XElement Parsed(string html)
    {
        using var text = new StringReader(html);
        using var reader = XmlReader.Create(text, new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore });
        return XElement.Load(reader);
    }

    public static IEnumerable<XElement> Rows(XElement page) =>
        page.Descendants("section")
            .First(one => (string?)one.Attribute("aria-labelledby") == "first")
            .Descendants("tr")
            .Where(row => row.Parent!.Name == "tbody");

    public static ReportPicture Picture(string title) =>
        new(
            title,
            title + " in words",
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"300\" height=\"100\"><text>x</text></svg>"
        );
}
