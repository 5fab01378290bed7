using OilCondition.Thermal;
using UnitsNet;

namespace OilCondition.Tests.Thermal;

/// <summary>What the results of the room print.</summary>
public class ToStringTests
{
    private static readonly OilProperties Oil = OilProperties.FromDensityAt15(Rho(870));
    private static readonly HeatedTank Tank = new(Entropy.FromKilojoulesPerKelvin(1700), 60);

    public static TheoryData<string, object> Results() =>
        new()
        {
            { "870 kg/m³ at 15 °C", Oil },
            // ρ15 exp(−a Δ (1 + 0.8 a Δ)), a Δ = 0.6278/870 × 45: 841.5; Cragoe: 2.02 kJ/(kg K) and 0.130 W/(m K).
            { "841 kg/m³, 2.02 kJ/(kg K), 0.13 W/(m K) at 60 °C", Oil.At(C(60)) },
            // a Δ = −0.018040: 870 × 1.01794 = 885.6; d = 0.8705: 0.3943/0.9330 × 4.1868 = 1.769, 0.1346 × 1.0054 = 0.1354.
            { "886 kg/m³, 1.77 kJ/(kg K), 0.135 W/(m K) at -10 °C, extrapolated", Oil.At(C(-10)) },
            { "0.9672", VolumeCorrection.Table54D(Rho(870), C(60)) },
            // a Δ = 0.101025, exp(−0.109190).
            { "0.8966, extrapolated", VolumeCorrection.Table54D(Rho(870), C(155)) },
            // 1.3 Btu/(h ft² °F) × 5.678.
            { "7.38 W/(m² K)", TankHeatLoss.Guide(TankSurface.ShelteredBare, C(27)) },
            { "2.27 W/(m² K), extrapolated: too low", TankHeatLoss.Guide(TankSurface.ExposedInsulated, C(60)) },
            { "1700 kJ/K, loses 60 W/K", Tank },
            // −(1 700 000/60) ln(1 − 60 × 40/6000) = 14 474 s.
            { "expected 4.02 h", Tank.TimeTo(C(60), C(20), Power.FromKilowatts(6), C(20)) },
            { "never on this course", Tank.TimeTo(C(60), C(20), Power.FromKilowatts(1), C(20)) },
        };

    [Theory]
    [MemberData(nameof(Results), DisableDiscoveryEnumeration = true)]
    public void A_result_prints_itself(string text, object result) => result.ToString().ShouldBe(text);

    private static Temperature C(double celsius) => Temperature.FromDegreesCelsius(celsius);

    private static Density Rho(double value) => Density.FromKilogramsPerCubicMeter(value);
}
