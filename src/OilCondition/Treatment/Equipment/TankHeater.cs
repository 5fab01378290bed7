using OilCondition.Text;
using OilCondition.Thermal;
using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>An electric heater in the tank itself: it warms still oil, and needs no pump.</summary>
/// <remarks>
/// <para>
/// P = min(P_rated, q A), and the tank follows C dT/dt = P − U (T − T_amb).   q: watt density that the oil bears [W/m²], which rises in steps as the oil
/// thins; A: heated surface [m²]; C: oil and steel [J/K]; U: loss [W/K]. The heater is taken to be turned down to q A; one that cannot be turned down
/// burns thick oil onto its sheath, see <see cref="IsHeldDownAt"/>.
/// </para>
/// <para>
/// An in-line heater gives no more than its flow carries away, and thick oil does not flow: the tank heater has no such limit, but its own film. It
/// warms the oil round it, not the oil at the far end of a still tank.
/// </para>
/// <para>Caution: never heat uncovered elements; keep well below the flash point; the makers' watt density comes before the guide.</para>
/// </remarks>
/// <example>
/// <code>
/// var heater = new TankHeater(Power.FromKilowatts(9), Area.FromSquareMeters(0.6));   // 1.5 W/cm²
/// var warm = heater.TimeTo(job, Temperature.FromDegreesCelsius(40));
/// </code>
/// </example>
public sealed class TankHeater
{
    private const double SquareCentimetres = 1e4;

    /// <summary>Up to which viscosity, in mm²/s, a sheath may give how much, in W/cm²; the thickest first.</summary>
    private static readonly (double Centistokes, double WattPerSquareCentimetre)[] Guide =
    [
        (double.PositiveInfinity, 0.7),
        (1500, 0.9),
        (680, 1.9),
        (100, 3.1),
    ];

    /// <summary>Describes a heater.</summary>
    /// <param name="power">Rated power, 1 W to 100 MW.</param>
    /// <param name="heatedArea">Surface of all its sheaths, 1 cm² to 10⁵ m².</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public TankHeater(Power power, Area heatedArea)
    {
        Guard.InRange((double)power.Watts, 1, 1e8, "W", nameof(power));
        Guard.InRange(heatedArea.SquareMeters, 1e-4, 1e5, "m²", nameof(heatedArea));
        Power = power;
        HeatedArea = heatedArea;
    }

    /// <summary>Where the guide figures come from.</summary>
    public static Source GuideSource { get; } =
        new(
            SourceKind.Handbook,
            "public guides of heater makers, lower ends: light oil 3.1, gear oil 1.9, heavy oil 0.9 W/cm², and 0.7 W/cm² for still oil; "
                + "where one begins and the other ends is common practice, no source"
        );

    /// <summary>Rated power.</summary>
    public Power Power { get; }

    /// <summary>Surface of all its sheaths.</summary>
    public Area HeatedArea { get; }

    /// <summary>Heat per surface at rated power.</summary>
    public HeatFlux WattDensity => HeatFlux.FromWattsPerSquareMeter((double)Power.Watts / HeatedArea.SquareMeters);

    /// <summary>Watt density that an oil bears by the guide: 3.1 W/cm² up to 100 mm²/s, 1.9 up to 680, 0.9 up to 1500, and 0.7 beyond.</summary>
    /// <param name="viscosity">Viscosity of the oil as it is, not at 40 °C; 0.21 to 2e7 mm²/s.</param>
    /// <returns>The watt density; source: <see cref="GuideSource"/>.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The viscosity lies outside its range.</exception>
    public static HeatFlux HighestWattDensity(KinematicViscosity viscosity)
    {
        var centistokes = PhysicalRange.Centistokes(viscosity);
        var step = Guide.Last(one => centistokes <= one.Centistokes);
        return HeatFlux.FromWattsPerSquareMeter(step.WattPerSquareCentimetre * SquareCentimetres);
    }

    /// <summary>Power that the heater may give to an oil at a temperature.</summary>
    /// <param name="line">The oil's viscosity against temperature.</param>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>The rated power, or as much as the film bears.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="line"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public Power PowerAt(ViscosityTemperatureLine line, Temperature temperature)
    {
        var density = HighestWattDensity(Guard.NotNull(line).ViscosityAt(temperature).Viscosity);
        return Power.FromWatts(Math.Min((double)Power.Watts, density.WattsPerSquareMeter * HeatedArea.SquareMeters));
    }

    /// <summary>Whether the film holds the heater below its rated power.</summary>
    /// <param name="line">The oil's viscosity against temperature.</param>
    /// <param name="temperature">Oil temperature, −60 to 200 °C.</param>
    /// <returns>True where a heater that cannot be turned down must not be switched on.</returns>
    /// <exception cref="ArgumentNullException"><paramref name="line"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public bool IsHeldDownAt(ViscosityTemperatureLine line, Temperature temperature) =>
        PowerAt(line, temperature) < Power;

    /// <summary>How long it warms the tank of a task, turned down while the oil is thick.</summary>
    /// <param name="job">The task: the oil, how much, how warm, and what it loses.</param>
    /// <param name="temperature">Oil temperature to reach, 0 to 150 °C.</param>
    /// <returns>Expected after a time, already there, or never: losses balance the heater before.</returns>
    /// <exception cref="ArgumentNullException">The task is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The temperature lies outside its range.</exception>
    public Arrival<TimeSpan> TimeTo(TreatmentJob job, Temperature temperature) => Warm(job, temperature).Arrival;

    /// <summary>The heater in a few words.</summary>
    /// <returns>For example <c>tank heater 9 kW, 1.5 W/cm²</c>.</returns>
    public override string ToString() =>
        $"tank heater {PlainText.Number((double)Power.Kilowatts)} kW, {PlainText.Number(WattDensity.WattsPerSquareMeter / SquareCentimetres)} W/cm²";

    /// <summary>The same with the heat that it takes: from step to step of the guide at constant power, which has a closed form.</summary>
    internal (Arrival<TimeSpan> Arrival, Energy Heat) Warm(TreatmentJob job, Temperature temperature)
    {
        Guard.InRange(temperature.DegreesCelsius, 0, 150, "°C", nameof(temperature));
        var (reservoir, oil) = (Guard.NotNull(job).Reservoir, job.Oil);
        if (temperature <= reservoir.Start)
        {
            return (new Arrival<TimeSpan>.Already(TimeSpan.Zero), Energy.Zero);
        }

        var tank = TankOf(job, temperature);
        var (from, hours, heat) = (reservoir.Start, 0.0, 0.0);
        foreach (var to in Steps(oil.ViscosityLine, from, temperature))
        {
            var middle = Temperature.FromDegreesCelsius((from.DegreesCelsius + to.DegreesCelsius) / 2);
            var power = PowerAt(oil.ViscosityLine, middle);
            if (
                tank.TimeTo(to, from, power + reservoir.HeatInput, reservoir.Ambient)
                is not Arrival<TimeSpan>.Expected step
            )
            {
                return (new Arrival<TimeSpan>.Never(), Energy.Zero);
            }

            hours += step.Estimate.TotalHours;
            heat += step.Estimate.TotalHours * (double)power.Kilowatts;
            from = to;
        }

        return (new Arrival<TimeSpan>.Expected(Elapsed.FromHours(hours)), Energy.FromKilowattHours(heat));
    }

    /// <summary>The tank of a task: oil and steel, with properties at the mean of start and end.</summary>
    private static HeatedTank TankOf(TreatmentJob job, Temperature end)
    {
        var mean = Temperature.FromDegreesCelsius((job.Reservoir.Start.DegreesCelsius + end.DegreesCelsius) / 2);
        var capacity = job.OilMass.Kilograms * job.Oil.Properties.At(mean).HeatCapacity.JoulesPerKilogramKelvin;
        return new HeatedTank(
            Entropy.FromJoulesPerKelvin(capacity + job.Reservoir.Steel.JoulesPerKelvin),
            job.Reservoir.LossWattPerKelvin
        );
    }

    /// <summary>Temperatures between two at which the guide takes its next step, and the last one.</summary>
    private static IEnumerable<Temperature> Steps(ViscosityTemperatureLine line, Temperature from, Temperature to) =>
        Guide
            .Skip(1)
            .Select(step => line.TemperatureFor(KinematicViscosity.FromCentistokes(step.Centistokes)).Temperature)
            .Where(step => step > from && step < to)
            .OrderBy(step => step.DegreesCelsius)
            .Append(to);
}
