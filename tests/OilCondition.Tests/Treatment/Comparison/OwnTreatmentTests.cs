using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Comparison;

/// <summary>A treatment of the user's own states times and reasons, and gets the same rows as the library's.</summary>
public class OwnTreatmentTests
{
    private sealed class Own(ContaminationForms reaches) : ITreatment
    {
        public string Name => "own";

        public TreatmentKind? Kind => null;

        public ContaminationForms Reaches => reaches;

        public TreatmentAssessment Assess(TreatmentJob job) => new(this, job, Sump.Ppm(5), TimeSpan.FromHours(3));
    }

    private static readonly Own Water = new(ContaminationForms.DissolvedWater);

    [Fact]
    public void A_time_is_expected_and_what_it_does_not_reach_is_not_touched()
    {
        var row = Water.Assess(Sump.Job(1000, 100, targetCode: "16/14/11"));

        row.Water.Hours().ShouldBe(3);
        row.WhyNotParticles.ShouldBe(WhyNot.NotTouched);
        row.WhyNot.ShouldBe(WhyNot.NotTouched);
        row.Arrival.ShouldBeOfType<Arrival<TimeSpan>.Never>();
        row.RunTime.ShouldBe(TimeSpan.FromHours(3));
        row.Cautions.ShouldBeEmpty();
        row.ToString().ShouldBe("own: water in 3 h, particles not reached (not touched), floor 5 mg/kg");
    }

    [Fact]
    public void What_is_met_from_the_start_needs_no_time()
    {
        var row = Water.Assess(Sump.Job(90, 100));
        row.Water.ShouldBeAlready();
        row.Particles.ShouldBeNull();
        row.RunTime.ShouldBe(TimeSpan.Zero);
        Water.Assess(Sump.Job(1000, 100, horizonHours: 2)).WhyNot.ShouldBe(WhyNot.TakesTooLong);
    }

    [Fact]
    public void A_reason_stands_in_place_of_a_time_and_one_of_them_is_needed()
    {
        var job = Sump.Job(1000, 100);
        var row = new TreatmentAssessment(Water, job, Sump.Ppm(5), whyNotWater: WhyNot.IngressTooHigh);
        row.WhyNot.ShouldBe(WhyNot.IngressTooHigh);
        row.RunTime.ShouldBeNull();
        row.TryCostAt(new TreatmentPrices(perHour: 1), out _).ShouldBeFalse();

        Should
            .Throw<ArgumentException>(() => new TreatmentAssessment(Water, job, Sump.Ppm(5)))
            .ParamName.ShouldBe("waterTime");
        Should
            .Throw<ArgumentOutOfRangeException>(() =>
                new TreatmentAssessment(Water, job, Sump.Ppm(5), TimeSpan.FromHours(-1))
            )
            .ParamName.ShouldBe("waterTime");
        Should
            .Throw<ArgumentNullException>(() => new TreatmentAssessment(null!, job, Sump.Ppm(5)))
            .ParamName.ShouldBe("treatment");
        Should
            .Throw<ArgumentNullException>(() => new TreatmentAssessment(Water, null!, Sump.Ppm(5)))
            .ParamName.ShouldBe("job");
    }
}
