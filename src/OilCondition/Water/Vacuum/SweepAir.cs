using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Water;

/// <summary>Air let into a vacuum stage, or leaking into it, that carries vapour away.</summary>
public sealed record SweepAir
{
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

    /// <summary>Perfectly dry air. Real dry air has a dew point: <see cref="FromAir"/>.</summary>
    /// <param name="dryAir">Mass flow, 0 or more.</param>
    /// <returns>The sweep.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The flow is negative or not finite.</exception>
    public static SweepAir Dry(MassFlow dryAir) => new(Checked(dryAir), 0);

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
    /// <returns>The sweep; perfectly dry where this is <see cref="None"/>.</returns>
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
