using OilCondition.Limits;
using OilCondition.Tests.Sampling;

namespace OilCondition.Tests.Advice;

/// <summary>How the types of this room print themselves, against texts written by hand.</summary>
public class AdviceTextTests
{
    private static readonly ConditionAssessment Assessment = ConditionAssessor.Assess(
        Invented.History(
            Enumerable
                .Range(0, 13)
                .Select(i =>
                    Invented.Sample(
                        i,
                        30 * i,
                        (Measurands.AcidNumber, new Reading(i == 12 ? 0.6 : 0.1)),
                        (Measurands.WaterContent, new Reading(212))
                    )
                )
        ),
        new LimitSet(
            "test",
            [
                new Limit(
                    Measurands.AcidNumber,
                    LimitKind.Absolute,
                    new LimitBand(0.3, 0.5),
                    null,
                    Source.CommonPractice("invented")
                ),
            ]
        ),
        new AssessmentOptions(Invented.Start.AddDays(400))
    );

    [Fact]
    public void An_assessment_prints_what_was_found_what_to_do_and_when_to_sample() =>
        Assessment
            .ToString()
            .ShouldBe(
                """
                M1 invented machine, 2026-02-10: alarm
                  alarm: Acid number: 0.6 mgKOH/g on 2026-01-01, above the alarm limit of 0.5 mgKOH/g (common
                      practice, no source: invented).
                  alert: Free water after standstill: of 212 mg/kg the oil holds 100 mg/kg at 20 °C, so that about
                      110 mg/kg, 90 to 140, are free (some 0.1 L at 20 °C); water separates below 40 °C.
                  information: Acid number: sudden change from about 0.1 to 0.6 mgKOH/g on 2026-01-01; to be
                      confirmed by another sample.
                  -> Plan the oil change. (oil fill 1000 L)
                  -> Drain the free water from the lowest point after standstill. (free water at standstill 0.1 L)
                  -> Dry the oil under vacuum. (oil fill 1000 L)
                  The next sample was due on 2026-01-15: a limit is passed or water is free, and another sample
                      should confirm it.
                """
            );

    [Fact]
    public void Its_parts_print_themselves_in_one_line()
    {
        Assessment
            .States.Single()
            .ToString()
            .ShouldBe(
                "acid number 0.6 mgKOH/g: alarm; sudden change from about 0.1 to 0.6 mgKOH/g, to be confirmed (13 readings); limit 0.5: passed by the latest sample"
            );
        Assessment
            .Findings[0]
            .ToString()
            .ShouldBe(
                "Acid number: 0.6 mgKOH/g on 2026-01-01, above the alarm limit of 0.5 mgKOH/g (common practice, no source: invented)."
            );
        Assessment.Recommendations[0].ToString().ShouldBe("Plan the oil change. (oil fill 1000 L)");
        Assessment.Alerts[0].ToString().ShouldStartWith("M1/charge-1/oil-ageing: Acid number: 0.6");
        Assessment
            .Water.ToString()
            .ShouldBe("212 mg/kg of water; free 0 at 60 °C, 110 at 20 °C; separates below 40 °C");
        var step = AlertJournal.Empty.Reconcile(Assessment);
        step.Journal.ToString().ShouldBe("2 alerts, 2 active");
        step.Changes[0]
            .ToString()
            .ShouldBe("raised: M1/charge-1/oil-ageing: alarm, unacknowledged active, raised 2026-02-10");
    }

    [Fact]
    public void A_number_in_the_evidence_is_the_one_that_is_written()
    {
        foreach (var item in Assessment.Findings.SelectMany(one => one.Evidence).Where(item => item.Value is not null))
        {
            double.Parse(item.Text, System.Globalization.CultureInfo.InvariantCulture).ShouldBe(item.Value!.Value);
        }

        var free = Assessment.Findings.SelectMany(one => one.Evidence).Single(item => item.Name == "free water");
        free.Value.ShouldBe(110); // 112 of a total that is known to 21 mg/kg
        free.ToString().ShouldBe("free water 110 mg/kg");
    }
}
