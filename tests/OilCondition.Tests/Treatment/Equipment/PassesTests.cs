using OilCondition.Treatment;

namespace OilCondition.Tests.Treatment.Equipment;

/// <summary>From tank to tank instead of round a loop. By hand: at η = 0.8 three passes leave 0.2³ = 0.8 % of the excess.</summary>
public class PassesTests
{
    private static readonly PurificationUnit Unit = Sump.Unit(eta: 0.8);

    [Fact]
    public void Three_passes_leave_a_hundred_and_twenty_fifth() =>
        Unit.WaterAfterPasses(Sump.Ppm(1020), Sump.Ppm(20), 3).PartsPerMillion.ShouldBe(28, 1e-9);

    [Theory]
    [InlineData(1000, 20, 30, true, 3)]
    [InlineData(1000, 20, 60, true, 2)]
    [InlineData(50, 20, 60, true, 0)]
    [InlineData(1000, 20, 20, false, 0)]
    public void The_fewest_passes_are_found(double start, double floor, double target, bool found, int count)
    {
        Unit.TryPassesTo(Sump.Ppm(start), Sump.Ppm(floor), Sump.Ppm(target), out var passes).ShouldBe(found);
        passes.ShouldBe(count);
    }

    [Fact]
    public void Bad_input_is_named() =>
        Should
            .Throw<ArgumentOutOfRangeException>(() => Unit.WaterAfterPasses(Sump.Ppm(100), Sump.Ppm(20), 1001))
            .ParamName.ShouldBe("passes");
}
