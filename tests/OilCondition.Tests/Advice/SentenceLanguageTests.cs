using System.Globalization;
using OilCondition.Cleanup;
using OilCondition.Limits;
using OilCondition.Prognosis;
using OilCondition.Statistics;
using OilCondition.Tests.Sampling;
using OilCondition.Tests.Text;
using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Advice;

/// <summary>The same facts in another language and in other units.</summary>
public class SentenceLanguageTests
{
    private static readonly List<ConditionAssessment> Drawn =
    [
        .. Enumerable
            .Range(0, 80)
            .Select(seed =>
                ConditionAssessor.Assess(
                    HostileHistories.Of(seed),
                    InventedHistories.Limits,
                    new AssessmentOptions(new InventedHistories(seed).End.AddDays(seed % 40))
                )
            ),
    ];

    private static IEnumerable<(string English, string German)> Pairs()
    {
        var (english, german) = (Sentences.English, Sentences.German);
        foreach (var one in Drawn)
        {
            foreach (var finding in one.Findings)
            {
                yield return (english.Of(finding), german.Of(finding));
            }

            foreach (var problem in one.Problems)
            {
                yield return (english.Of(problem), german.Of(problem));
                yield return (english.Basis(problem), german.Basis(problem));
                yield return (
                    string.Join("\n", english.Evidence(problem)),
                    string.Join("\n", german.Evidence(problem))
                );
            }

            foreach (var recommendation in one.Recommendations)
            {
                yield return (english.Of(recommendation), german.Of(recommendation));
            }

            foreach (var state in one.States)
            {
                yield return (english.Of(state), german.Of(state));
                foreach (var life in state.Lives)
                {
                    yield return (english.Of(state, life), german.Of(state, life));
                }
            }

            if (one.NextSample is { } next)
            {
                yield return (english.Of(next), german.Of(next));
            }
        }
    }

    [Fact]
    public void German_says_the_same_figures_and_dates()
    {
        var seen = 0;
        foreach (var (english, german) in Pairs())
        {
            SaidTwice.HasTheSameFigures(english, german);
            seen++;
        }

        seen.ShouldBeGreaterThan(2000);
    }

    [Fact]
    public void German_leaves_nothing_in_English_but_sources_and_names()
    {
        string[] english =
        [
            "the",
            "of",
            "and",
            "reading",
            "readings",
            "since",
            "limit",
            "trend",
            "water",
            "before",
            "rising",
            "falling",
            "sample",
            "set",
            "aside",
            "free",
            "particles",
            "iron",
            "acid",
            "viscosity",
            "chance",
            "factor",
            "used",
            "left",
            "out",
            "read",
            "at",
            "from",
            "no",
        ];
        foreach (var (_, german) in Pairs())
        {
            // A source is quoted as it stands: the starter limits name theirs in English.
            var own = Pattern
                .Of(
                    @"(\(common practice, no source: [^)]*\)|Quelle der Grenze [^;\n]*|Sättigungskurve [^;]*; [^;]*|ASTM[^;,)]*)"
                )
                .Replace(german, "");
            var left = Pattern.Of("[A-Za-z]+").Matches(own).Select(one => one.Value).Intersect(english).ToList();
            left.ShouldBeEmpty(german);
        }
    }

    [Fact]
    public void German_has_every_phrase_and_the_name_of_every_measurand()
    {
        var german = Sentences.German.Keys.ToHashSet();

        Measurands.All.Where(one => !german.Contains("measurand." + one.Id)).ShouldBeEmpty();
        Enum.GetValues<LeftOutReason>()
            .Where(one => !german.Contains("evidence.readings-left-out-" + PlainText.Kebab(one)))
            .ShouldBeEmpty();
        Enum.GetValues<TopUpOutcome>().Where(one => !german.Contains("fact." + PlainText.Kebab(one))).ShouldBeEmpty();
        Enum.GetValues<TrendMethod>().Where(one => !german.Contains("fact." + PlainText.Kebab(one))).ShouldBeEmpty();
        PhraseBook
            .Resource(typeof(Sentences).Assembly, "sentences.de.json")
            .Split('\n')
            .Select(line => Pattern.Of("^    \"([a-zA-Z0-9. -]+)\":").Match(line).Groups[1].Value)
            .Where(key => key.Length > 0)
            .ShouldBe(german, ignoreOrder: true);
        Drawn
            .SelectMany(one => one.Problems)
            .SelectMany(one => one.Evidence)
            .SelectMany(part => part)
            .Where(item => !german.Contains("evidence." + item.Id) && !german.Contains("measurand." + item.Id))
            .Select(item => item.Id)
            .Distinct()
            .ShouldBeEmpty();
    }

    /// <summary>Factors after NIST SP 811 (2008), appendix B.8: °F = 1.8 °C + 32, 1 gal (US) = 3.785411784 L.</summary>
    [Fact]
    public void US_customary_units_are_those_of_the_tables()
    {
        var us = Sentences.English.In(Sentences.Units.UsCustomary);

        us.Text(Temperature.FromDegreesCelsius(48)).ShouldBe("118 °F");
        us.Text(Volume.FromLiters(3.785411784 * 476.2)).ShouldBe("476 gal");
        us.Text(new Reading(20, Qualifier.LessThan), Measurands.WaterContent).ShouldBe("<20 ppm");
        us.Text(new Reading(46.2), Measurands.Viscosity40).ShouldBe("46.2 cSt");
        us.Text(new Reading(40), Measurands.OilTemperature).ShouldBe("104 °F");
        us.Unit(Measurands.WaterContent).ShouldBe("ppm");
        us.In(Sentences.Units.Si).Text(Temperature.FromDegreesCelsius(48)).ShouldBe("48 °C");
        us.ToString().ShouldBe("en, US customary");
    }

    [Fact]
    public void A_rise_of_a_temperature_is_not_shifted_by_the_zero_of_the_scale()
    {
        ConditionAssessment With(double alert) =>
            ConditionAssessor.Assess(
                Invented.History(
                    Enumerable
                        .Range(0, 24)
                        .Select(i =>
                            Invented.Sample(i, 30 * i, (Measurands.OilTemperature, new Reading(40 + i + 0.1 * (i % 2))))
                        )
                ),
                new LimitSet(
                    "invented",
                    [
                        new Limit(
                            Measurands.OilTemperature,
                            LimitKind.Absolute,
                            new LimitBand(alert, 90),
                            null,
                            Source.UserData("invented")
                        ),
                    ]
                ),
                new AssessmentOptions(Invented.Start.AddDays(700))
            );
        var us = Sentences.English.In(Sentences.Units.UsCustomary);

        Sentences.English.Of(With(60).States[0]).ShouldStartWith("rising, 1 °C per 30 days");
        us.Of(With(60).States[0]).ShouldStartWith("rising, 1.8 °F per 30 days");
        us.Of(With(60).Problems[0]).ShouldContain("alert limit of 140 °F");
        us.Of(TrendPace.Evidence(With(60).States[0].Trend)).ShouldBe("change per 30 days 1.8 °F");
    }

    /// <summary>A rise of 20 °C is one of 36 °F; water by mass is the same figure in ppm.</summary>
    [Fact]
    public void A_rate_of_change_has_its_unit_in_every_language()
    {
        (Problem, Problem) Risen(double by, TimeSpan per, bool overOilHours)
        {
            Problem Of(Measurand measurand) =>
                ConditionAssessor
                    .Assess(
                        Invented.History([
                            Invented.Sample(0, 0, (measurand, new Reading(40)), (Measurands.OilHours, new Reading(0))),
                            Invented.Sample(
                                1,
                                30,
                                (measurand, new Reading(40 + by)),
                                (Measurands.OilHours, new Reading(500))
                            ),
                        ]),
                        new LimitSet(
                            "invented",
                            [
                                new Limit(
                                    measurand,
                                    LimitKind.RateOfChange,
                                    new LimitBand(null, 10),
                                    null,
                                    Source.UserData("invented"),
                                    per: per,
                                    overOilHours: overOilHours
                                ),
                            ]
                        ),
                        new AssessmentOptions(Invented.Start.AddDays(31))
                    )
                    .Problems.Single(one => one.Findings[0].Measurand.Equals(measurand));
            return (Of(Measurands.WaterContent), Of(Measurands.OilTemperature));
        }

        var us = Sentences.German.In(Sentences.Units.UsCustomary);
        var (water, warmth) = Risen(20, TimeSpan.FromDays(30), overOilHours: false);
        var (hourly, _) = Risen(20, TimeSpan.FromHours(500), overOilHours: true);

        Sentences.English.Of(water).ShouldContain("changed at 20 mg/kg per 30 days, where the alarm limit is 10");
        Sentences
            .English.Evidence(water)[0]
            .ShouldContain("rate of change 20 mg/kg per 30 days; limit 10 mg/kg per 30 days");
        Sentences.German.Of(water).ShouldContain("Änderung 20 mg/kg in 30 Tagen, wo die Alarmgrenze 10 ist");
        us.Evidence(water)[0].ShouldContain("Änderungsrate 20 ppm in 30 Tagen; Grenze 10 ppm in 30 Tagen");
        us.Of(warmth).ShouldContain("Änderung 36 °F in 30 Tagen, wo die Alarmgrenze 18 ist");
        us.Evidence(warmth)[0].ShouldContain("Änderungsrate 36 °F in 30 Tagen; Grenze 18 °F in 30 Tagen");
        Sentences.English.Of(hourly).ShouldContain("changed at 20 mg/kg per 500 oil hours");
        Sentences.German.Of(hourly).ShouldContain("Änderung 20 mg/kg in 500 Ölstunden");
        Sentences.German.Text(new Reading(640), Measurands.Particles4).ShouldBe("640 je mL");
    }

    [Fact]
    public void Free_water_is_told_in_degrees_and_gallons()
    {
        var us = Sentences.English.In(Sentences.Units.UsCustomary);
        var free = Drawn
            .SelectMany(one => one.Findings)
            .Where(one => one.Code is FindingCode.FreeWaterRunning or FindingCode.FreeWaterAtStandstill)
            .Select(us.Of)
            .ToList();

        free.ShouldNotBeEmpty();
        free.ShouldAllBe(text =>
            text.Contains("°F", StringComparison.Ordinal)
            && text.Contains(" gal", StringComparison.Ordinal)
            && text.Contains(" ppm", StringComparison.Ordinal)
        );
        free.ShouldAllBe(text => !Pattern.Of("°C| L |mg/kg").IsMatch(text));
    }

    [Fact]
    public void Words_are_replaced_and_faults_listed_together()
    {
        var own = Sentences.Parse(
            """{ "language": "en-GB", "texts": { "caution.vacuum": "Mind the vacuum.", "measurand.water-content": "moisture", "topic.water": "moisture" } }"""
        );

        own.Of(Caution.Vacuum).ShouldBe("Mind the vacuum.");
        own.Of(Caution.HotOil).ShouldBe(Sentences.English.Of(Caution.HotOil));
        own.Name(Measurands.WaterContent).ShouldBe("moisture");
        own.Of(ProblemTopic.Water).ShouldBe("Moisture");
        own.Language.ShouldBe("en-GB");
        var fault = Should.Throw<FormatException>(() =>
            Sentences.Parse("""{ "language": "en", "texts": { "caution.vacum": "x", "next.due": "{day}" } }""")
        );
        fault.Message.ShouldBe(
            "In a set of sentences: 2 faults: 'caution.vacum' is no key of it; 'next.due' has {day}; expected are {date}, {why}."
        );
    }

    [Fact]
    public void Every_member_of_an_enumeration_that_is_told_has_its_phrase()
    {
        foreach (var say in new[] { Sentences.English, Sentences.German })
        {
            Enum.GetValues<Caution>().Select(say.Of).ShouldBeUnique();
            Enum.GetValues<ProblemTopic>().Select(say.Of).ShouldBeUnique();
            Enum.GetValues<LimitReason>().Select(say.Of).ShouldBeUnique();
            Enum.GetValues<LimitState>().Select(say.Of).ShouldBeUnique();
            Enum.GetValues<Severity>().Select(say.Of).ShouldBeUnique();
            Enum.GetValues<TreatmentKind>().Select(say.Of).ShouldBeUnique();
            foreach (var reason in Enum.GetValues<NextSampleReason>())
            {
                say.Keys.ShouldContain("next." + PlainText.Kebab(reason));
            }

            foreach (var action in Enum.GetValues<RecommendedAction>())
            {
                say.Keys.ShouldContain("recommendation." + PlainText.Kebab(action));
            }
        }
    }

    [Fact]
    public void Hours_are_told_with_the_spread_that_they_have()
    {
        static string Told(Sentences say, params double?[] hours) =>
            say.Hours(
                new TreatmentBand(
                    hours.Select(one => (one is { } h ? TimeSpan.FromHours(h) : (TimeSpan?)null, MassFraction.Zero))
                )
            );

        Told(Sentences.English, 4, 4, 4, 4, 4).ShouldBe("4 h");
        Told(Sentences.English, 2, 3, 4, 5, 8).ShouldBe("4 h (2 to 8)");
        Told(Sentences.German, 2, 3, 4, 5, 8).ShouldBe("4 h (2 bis 8)");
        Told(Sentences.English, 2, 3, 4, 5, null).ShouldBe("4 h or more");
        Told(Sentences.English, 2, 3, null, null, null).ShouldBe("2 h or more");
        Told(Sentences.English, null, null, null, null, null).ShouldBe("not told");
    }

    [Fact]
    public void What_a_cleanup_says_of_its_readings_is_said_in_both_languages()
    {
        foreach (var (samples, sensor, word) in new[] { (215.0, 180.0, "mehr"), (180.0, 215.0, "weniger") })
        {
            var apart = new SourceContradiction(Measurands.WaterContent, samples, sensor, 14, 4);

            Sentences.English.Of(apart).ShouldBe(apart.ToString());
            Sentences.German.Of(apart).ShouldBe($"die Proben zeigen 40 ± 10 mg/kg {word} als der Sensor (4 Werte)");
            Sentences.English.In(Sentences.Units.UsCustomary).Of(apart).ShouldContain("40 ± 10 ppm");
        }

        Enum.GetValues<CourseDeparture>().Select(Sentences.German.Of).ShouldBeUnique();
        Sentences.English.Of(CourseDeparture.FasterAtFirst).ShouldBe("falls faster at first than one exponential");
    }

    [Fact]
    public void The_culture_of_the_machine_does_not_matter()
    {
        var before = CultureInfo.CurrentCulture;
        var expected = Pairs().ToList();
        var odd = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        odd.NumberFormat.NumberDecimalSeparator = "#";
        try
        {
            CultureInfo.CurrentCulture = odd;
            Pairs().ShouldBe(expected);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}
