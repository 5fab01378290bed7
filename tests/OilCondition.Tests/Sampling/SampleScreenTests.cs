namespace OilCondition.Tests.Sampling;

/// <summary>Where the screen for bottles of another oil draws its lines; rules of common practice, figures by hand.</summary>
public class SampleScreenTests
{
    private static bool IsSuspect(params (Measurand Measurand, double Low, double High, double Jump)[] measured) =>
        IsSuspect(10, measured);

    /// <summary>Whether the jump of the sample in the middle, or just after it, is found.</summary>
    private static bool IsSuspect(
        int count,
        params (Measurand Measurand, double Low, double High, double Jump)[] measured
    ) =>
        Invented
            .History(
                Enumerable
                    .Range(0, count)
                    .Select(i =>
                        Invented.Sample(
                            i,
                            30 * i,
                            [
                                .. measured.Select(one =>
                                    (
                                        one.Measurand,
                                        new Reading(
                                            i == count / 2 ? one.Jump
                                            : i % 2 == 0 ? one.Low
                                            : one.High
                                        )
                                    )
                                ),
                            ]
                        )
                    )
            )
            .Issues.Any(issue => issue.SampleNumber == $"S{count / 2}" && issue.Kind == HistoryIssueKind.SuspectSample);

    [Theory]
    [InlineData(68, false)] // 46 ± 2: scatter 1.4826 x 2 = 2.97, ten times that is 29.7
    [InlineData(81, true)]
    public void A_jump_counts_from_ten_times_the_scatter_on(double jump, bool expected) =>
        IsSuspect((Measurands.Viscosity40, 44, 48, jump), (Measurands.Zinc, 440, 480, 10 * jump)).ShouldBe(expected);

    [Theory]
    [InlineData(1.15, false)]
    [InlineData(1.3, true)]
    public void A_jump_counts_from_a_fifth_of_the_value_on(double factor, bool expected) =>
        IsSuspect((Measurands.Viscosity40, 46, 46, 46 * factor), (Measurands.Zinc, 400, 400, 400 * factor))
            .ShouldBe(expected);

    [Fact]
    public void One_identity_measurand_needs_two_other_jumps_and_no_second_that_stays()
    {
        var viscosity = (Measurands.Viscosity40, 46.0, 46.0, 321.0);
        var iron = (Measurands.Iron, 5.0, 5.0, 90.0);
        var tin = (Measurands.Tin, 2.0, 2.0, 40.0);

        IsSuspect(viscosity).ShouldBeFalse();
        IsSuspect(viscosity, iron).ShouldBeFalse();
        IsSuspect(viscosity, iron, tin).ShouldBeTrue();
        IsSuspect(viscosity, iron, tin, (Measurands.Zinc, 400, 400, 400)).ShouldBeFalse();
    }

    [Theory]
    [InlineData(4, false)]
    [InlineData(5, true)]
    public void Five_samples_are_the_fewest(int count, bool expected) =>
        IsSuspect(count, (Measurands.Viscosity40, 46, 46, 321), (Measurands.Zinc, 400, 400, 15)).ShouldBe(expected);

    [Theory]
    [InlineData(4, false)]
    [InlineData(6, true)]
    public void Traces_of_elements_that_come_and_go_tell_no_other_oil(double jump, bool expected) =>
        IsSuspect((Measurands.Barium, 0, 0, jump), (Measurands.Boron, 0, 0, jump)).ShouldBe(expected);
}
