using OilCondition.Treatment;

namespace OilCondition.Tests.Treatment.Job;

/// <summary>The answer to 'when is it reached' has a time only where there is one, and a reason wherever there is none.</summary>
public class TargetPartTests
{
    private static readonly TreatmentJob Task = Sump.Job(1000, 100, horizonHours: 48);

    public static TheoryData<WhyNot> Reasons() => [.. Enum.GetValues<WhyNot>()];

    [Theory]
    [MemberData(nameof(Reasons))]
    public void A_part_that_is_not_reached_has_a_reason_and_no_estimate(WhyNot whyNot)
    {
        var part = TargetPart.Not(whyNot, Task);

        part.WhyNot.ShouldBe(whyNot);
        part.IsMet.ShouldBeFalse();
        part.Time.ShouldBeNull();
        part.Arrival!.TryEstimate(out _).ShouldBeFalse();
        var expected = whyNot switch
        {
            WhyNot.TakesTooLong => typeof(Arrival<TimeSpan>.NotBefore),
            WhyNot.DensityNotStated => typeof(Arrival<TimeSpan>.NotDetermined),
            _ => typeof(Arrival<TimeSpan>.Never),
        };
        part.Arrival.ShouldBeOfType(expected);
        part.ToString().Length.ShouldBeLessThan(20, "it must fit its column");
    }

    [Fact]
    public void The_horizon_bounds_what_is_expected()
    {
        TargetPart.Within(Task, 48).Arrival.Hours().ShouldBe(48);
        TargetPart
            .Within(Task, 48.01)
            .Arrival.ShouldBeOfType<Arrival<TimeSpan>.NotBefore>()
            .Earliest.ShouldBe(TimeSpan.FromHours(48));
    }

    [Fact]
    public void Of_two_parts_the_one_that_fails_tells_and_else_the_later()
    {
        var (early, late) = (TargetPart.Within(Task, 2), TargetPart.Within(Task, 5));
        var (no, nor) = (TargetPart.Not(WhyNot.FloorAboveTarget, Task), TargetPart.Not(WhyNot.NotTouched, Task));

        TargetPart.Both(early, late).ShouldBe(late);
        TargetPart.Both(late, early).ShouldBe(late);
        TargetPart.Both(TargetPart.NotAsked, early).ShouldBe(early);
        TargetPart.Both(early, TargetPart.NotAsked).ShouldBe(early);
        TargetPart.Both(TargetPart.NotAsked, TargetPart.Already).ShouldBe(TargetPart.Already);
        TargetPart.Both(TargetPart.Already, late).ShouldBe(late);
        TargetPart.Both(no, nor).ShouldBe(no);
        TargetPart.Both(early, nor).ShouldBe(nor);
        TargetPart.RunTime(early, late).ShouldBe(TimeSpan.FromHours(5));
        TargetPart.RunTime(early, nor).ShouldBe(TimeSpan.FromHours(2));
        TargetPart.RunTime(no, TargetPart.Already).ShouldBeNull();
    }
}
