using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>Air let into a vacuum stage, or leaking into it, that carries vapour away.</summary>
public sealed record SweepAir
{
    /// <summary>W = 0.621945 p_w/(p − p_w), p_w = 12.84 Pa over ice at −40 °C (IAPWS R14-08), p = 101 325 Pa.</summary>
    private static readonly double DryerHumidityRatio = HumidAir
        .FromDewPoint(Temperature.FromDegreesCelsius(20), Temperature.FromDegreesCelsius(-40))
        .HumidityRatioAt(StandardAtmosphere.SeaLevel)
        .DecimalFractions;

    private readonly double humidityRatio;

    private SweepAir(MassFlow dryAir, double humidityRatio)
    {
        this.humidityRatio = humidityRatio;
        DryAir = dryAir;
        Moisture = MassFlow.FromKilogramsPerSecond(dryAir.KilogramsPerSecond * humidityRatio);
    }

    /// <summary>No sweep and no leak: all that the pump draws is water vapour.</summary>
    public static SweepAir None { get; } = Dry(MassFlow.Zero);

    /// <summary>Mass flow of dry air.</summary>
    public MassFlow DryAir { get; }

    /// <summary>Water vapour that the air brings with it.</summary>
    public MassFlow Moisture { get; }

    /// <summary>Air from a dryer: it has a dew point of −40 °C at one atmosphere (common practice, no source). No air is perfectly dry.</summary>
    /// <remarks>What a dryer really gives goes in by <see cref="FromAir"/>: a refrigerated one some 3 °C, a desiccant at its end that of the air outside.</remarks>
    /// <param name="dryAir">Mass flow, 0 or more.</param>
    /// <returns>The sweep.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is negative or not finite.</exception>
    public static SweepAir Dry(MassFlow dryAir) => new(Checked(dryAir), DryerHumidityRatio);

    /// <summary>Air of known humidity, taken in at a known pressure.</summary>
    /// <param name="dryAir">Mass flow of its dry part, 0 or more.</param>
    /// <param name="air">The air as taken in: ambient, or behind a dryer.</param>
    /// <param name="intakePressure">Absolute pressure at which <paramref name="air"/> was described, above its vapour pressure.</param>
    /// <returns>The sweep.</returns>
    /// <exception cref="ArgumentNullException">The air is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A flow or pressure lies outside its range.</exception>
    public static SweepAir FromAir(MassFlow dryAir, HumidAir air, Pressure intakePressure) =>
        new(Checked(dryAir), Guard.NotNull(air).HumidityRatioAt(intakePressure).DecimalFractions);

    /// <summary>The same air at another flow.</summary>
    /// <param name="dryAir">Mass flow of its dry part, 0 or more.</param>
    /// <returns>The sweep; air from a dryer where this is <see cref="None"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is negative or not finite.</exception>
    public SweepAir WithFlow(MassFlow dryAir) => new(Checked(dryAir), humidityRatio);

    private static MassFlow Checked(MassFlow dryAir)
    {
        Guard.InRange(dryAir.KilogramsPerSecond, 0, 1e6, "kg/s", nameof(dryAir));
        return dryAir;
    }

    /// <summary>The air in one line.</summary>
    /// <returns>For example <c>2 kg/h dry air with 0.02 kg/h water</c>.</returns>
    public override string ToString() =>
        DryAir.KilogramsPerSecond == 0
            ? "no sweep air"
            : $"{PlainText.Number(DryAir.KilogramsPerHour)} kg/h dry air with {PlainText.Number(Moisture.KilogramsPerHour)} kg/h water";
}
