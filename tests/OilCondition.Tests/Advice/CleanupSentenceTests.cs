using OilCondition.Limits;
using OilCondition.Tests.Sampling;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Advice;

/// <summary>What is said of a run when its date has passed, and by whose clock.</summary>
public class CleanupSentenceTests
{
    private static readonly DateTimeOffset Started = new(2031, 5, 6, 0, 0, 0, TimeSpan.Zero);

    /// <summary>350 to 40 mg/kg at 0.15 1/h, read each half hour for 14 h: through 80 after ln(310/40)/0.15 = 13.65 h, held for 4 h at about 17.9 h.</summary>
    private static ConditionAssessment At(double hours, TimeSpan offset, TreatmentRun.PlannedUnit? planned = null) =>
        ConditionAssessor.Assess(
            OilHistory.Create(
                Invented.Machine,
                [],
                Enumerable
                    .Range(0, 27)
                    .Select(i => new SensorReading(
                        Started.AddHours(i / 2.0),
                        new Dictionary<Measurand, Reading>
                        {
                            [Measurands.WaterContent] = new(Math.Round(40 + 310 * Math.Exp(-0.075 * i), 1)),
                        }
                    )),
                [
                    new TreatmentRun(
                        Started,
                        null,
                        TreatmentKind.VacuumDehydration,
                        Measurands.WaterContent,
                        80,
                        planned: planned
                    ),
                ]
            ),
            new LimitSet(
                "own",
                [
                    new Limit(
                        Measurands.WaterContent,
                        LimitKind.Absolute,
                        new LimitBand(500, 800),
                        null,
                        Source.UserData("invented")
                    ),
                ]
            ),
            new AssessmentOptions(Started.AddHours(hours).ToOffset(offset))
        );

    private static string Sentence(ConditionAssessment assessment) =>
        assessment.Findings.Single(one => one.Code == FindingCode.CleanupUnderWay).ToString()!;

    [Fact]
    public void Before_its_date_it_is_expected_by_the_clock_of_the_assessment()
    {
        var assessment = At(14, TimeSpan.FromHours(10));

        assessment.Cleanup!.IsPastDue.ShouldBeFalse();

        // 18:00 by universal time is 04:00 of the next day there.
        Sentence(assessment).ShouldContain("is expected to have held for 4 h at 2031-05-07 0");
        Sentence(assessment).ShouldNotContain("past due");
    }

    [Fact]
    public void After_its_date_it_is_past_due_and_the_last_reading_is_named()
    {
        var assessment = At(20, TimeSpan.FromHours(2));

        assessment.Cleanup!.IsPastDue.ShouldBeTrue();
        var sentence = Sentence(assessment);
        sentence.ShouldContain("was expected to have held for 4 h at 2031-05-06 ");
        sentence.ShouldContain("past due at 2031-05-06 22:00");
        sentence.ShouldContain("the last reading is of 2031-05-06 15:00");
        sentence.ShouldNotContain("is expected");
    }

    [Fact]
    public void Evidence_has_the_same_clock()
    {
        var finding = At(20, TimeSpan.FromHours(2)).Findings.Single(one => one.Code == FindingCode.CleanupUnderWay);

        finding.Evidence.Single(one => one.Name == "started").Text.ShouldBe("2031-05-06 02:00");
        finding.Evidence.Single(one => one.Name == "past due at").Text.ShouldBe("2031-05-06 22:00");
    }

    /// <summary>
    /// It falls at 0.15 1/h. A plan of 0.6 1/h makes that a quarter of the planned pace; beside one of 0.15 it is as planned, and 0.19 is not a quarter more.
    /// </summary>
    [Theory]
    [InlineData(0.6, true)]
    [InlineData(0.19, false)]
    [InlineData(0.15, false)]
    public void A_run_that_falls_slower_than_planned_is_said_to(double rate, bool isSlower)
    {
        var planned = new TreatmentRun.PlannedUnit(
            VolumeFlow.FromLitersPerHour(Invented.Machine.ChargeVolume.Liters * rate / 0.8),
            Ratio.FromPercent(80),
            MassFraction.FromPartsPerMillion(40)
        );
        var assessment = At(14, TimeSpan.Zero, planned);

        var finding = assessment.Findings.Single(one => one.Code == FindingCode.CleanupUnderWay);
        var pace = finding.Evidence.SingleOrDefault(one => one.Id == "part-of-the-planned-pace-at-most");
        var status = assessment.Cleanup!.Status;
        if (isSlower)
        {
            pace!.Value!.Value.ShouldBeInRange(25, 26);
            finding.ToString()!.ShouldContain("; it falls at 2");
            finding
                .ToString()!
                .ShouldContain(" % of the planned pace at most: look at flow, temperature and the unit.");
            Sentences.German.Of(finding).ShouldContain(" % des geplanten Tempos: Durchfluss");
            status.ToString().ShouldContain(" % of the planned pace at most");
        }
        else
        {
            pace.ShouldBeNull();
            finding.ToString()!.ShouldNotContain("pace");
            status.ToString().ShouldNotContain("pace");
        }

        // The figures behind it, for whoever wants them.
        status.BesidePlan!.Planned.RatePerHour.ShouldBe(rate, 1e-9);
        At(14, TimeSpan.Zero).Cleanup!.Status.BesidePlan.ShouldBeNull();
    }
}
