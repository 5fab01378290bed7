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
                  alarm: Oil ageing: acid number 0.6 mgKOH/g on 2026-01-01, above the alarm limit of 0.5 mgKOH/g,
                      sudden change from about 0.1 to 0.6 mgKOH/g on 2026-01-01, to be confirmed by another sample.
                      reading 0.6 mgKOH/g; read at 2026-01-01 08:00; from sample S12; limit 0.5 mgKOH/g; beyond
                          since 2026-01-01; limit source common practice, no source: invented; usual before 0.1
                          mgKOH/g; usual since 0.6 mgKOH/g; first read at 2026-01-01; readings since 1; chance of
                          such a change by scatter 1.44E-7
                  alert: Water: water content 212 mg/kg on 2026-01-01, about 110 mg/kg (90 to 140) of it free after
                      standstill (20 °C).
                      reading 212 mg/kg; read at 2026-01-01 08:00; oil temperature 20 °C; saturation 100 mg/kg; free
                          water 110 mg/kg; free water, at least 90 mg/kg; free water, at most 140 mg/kg; separates
                          below 40 °C; saturation curve invented oil; user data: invented; curve extrapolated no
                  -> Oil ageing: Plan the oil change. (oil fill 1000 L)
                  -> Water: Drain the free water from the lowest point after standstill. (free water at standstill
                      0.1 L)
                  -> Water: Dry the oil under vacuum. (oil fill 1000 L)
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
        Assessment.Recommendations[0].ToString().ShouldBe("Oil ageing: Plan the oil change. (oil fill 1000 L)");
        Assessment.Alerts[0].ToString().ShouldStartWith("M1/undated/oil-ageing: Oil ageing: acid number 0.6");
        Assessment
            .Water.ToString()
            .ShouldBe("212 mg/kg of water; free 0 at 60 °C, 110 at 20 °C; separates below 40 °C");
        var journal = AlertJournal.Empty.Reconcile(Assessment);
        journal.ToString().ShouldBe("2 alerts, 2 active, 2 to be delivered");
        journal
            .Find("M1/undated/oil-ageing")!
            .ToString()
            .ShouldBe("M1/undated/oil-ageing: alarm, unacknowledged active, raised 2026-02-10");
        journal.Pending[0].ToString().ShouldBe("2026-02-10 raised: M1/undated/oil-ageing (alarm), to be delivered");
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
