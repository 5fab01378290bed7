using OilCondition.Text;
using OilCondition.Thermal;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>Oil that stands in its tank and cools, or warms, towards its surroundings: T(t) in closed form, and how far spheres sink meanwhile.</summary>
/// <remarks>
/// T = T_inf + (T_0 − T_inf) exp(−t U/C), T_inf = T_amb + P_in/U (<see cref="HeatedTank"/>).   Depth: s(t) = ∫ v(T(t)) dt, summed on a grid that is fine at the
/// start, where the oil cools fastest, and coarse at the horizon.
/// </remarks>
internal sealed class StandingOil
{
    private const int Steps = 3000;
    private const double SameCelsius = 0.002;
    private const double HottestCelsius = 190;

    private readonly TreatmentJob job;
    private readonly double[] celsius = new double[Steps + 1];

    public StandingOil(TreatmentJob job, Temperature start)
    {
        this.job = job;
        Start = start;
        var reservoir = job.Reservoir;
        Tank = TankOf(job, start);
        Seconds = new double[Steps + 1];
        for (var i = 0; i <= Steps; i++)
        {
            var share = (double)i / Steps;
            Seconds[i] = job.Horizon.TotalSeconds * share * share;
            celsius[i] = Math.Min(
                HottestCelsius,
                Tank.TemperatureAfter(
                    start,
                    reservoir.HeatInput,
                    reservoir.Ambient,
                    Elapsed.FromSeconds(Seconds[i])
                ).DegreesCelsius
            );
        }

        End = Temperature.FromDegreesCelsius(SteadyCelsius(job, Tank, start));
    }

    public Temperature Start { get; }

    /// <summary>Where the temperature ends.</summary>
    public Temperature End { get; }

    public HeatedTank Tank { get; }

    public double[] Seconds { get; }

    public double CelsiusAt(int index) => celsius[index];

    /// <summary>The last index before the oil is colder than a temperature; the last of all where it never is.</summary>
    public int LastAbove(double lowestCelsius)
    {
        for (var i = 0; i <= Steps; i++)
        {
            if (celsius[i] < lowestCelsius)
            {
                return i - 1;
            }
        }

        return Steps;
    }

    /// <summary>Depths in metres at the times of the grid, of a sphere of which the velocity at a temperature is known; 0 where it floats.</summary>
    public double[] Depths(Func<Temperature, double> metrePerSecondAt)
    {
        var depths = new double[Steps + 1];
        var (at, speed) = (double.NaN, 0.0);
        var before = 0.0;
        for (var i = 0; i <= Steps; i++)
        {
            if (!(Math.Abs(celsius[i] - at) < SameCelsius))
            {
                at = celsius[i];
                speed = Math.Max(0, metrePerSecondAt(Temperature.FromDegreesCelsius(at)));
            }

            if (i > 0)
            {
                depths[i] = depths[i - 1] + 0.5 * (before + speed) * (Seconds[i] - Seconds[i - 1]);
            }

            before = speed;
        }

        return depths;
    }

    public double[] DropDepths(Length diameter) =>
        Depths(temperature => DropletSettling.In(job.Oil, temperature, diameter).Velocity.MetersPerSecond);

    /// <summary>The tank of a task with its oil and steel.</summary>
    public static HeatedTank TankOf(TreatmentJob job, Temperature start)
    {
        var mean = Temperature.FromDegreesCelsius((start.DegreesCelsius + job.Reservoir.Ambient.DegreesCelsius) / 2);
        return new HeatedTank(
            Entropy.FromJoulesPerKelvin(
                job.OilMass.Kilograms * job.Oil.Properties.At(mean).HeatCapacity.JoulesPerKilogramKelvin
                    + job.Reservoir.Steel.JoulesPerKelvin
            ),
            job.Reservoir.LossWattPerKelvin
        );
    }

    public static double SteadyCelsius(TreatmentJob job, HeatedTank tank, Temperature start)
    {
        var reservoir = job.Reservoir;
        var isLossless = reservoir.LossWattPerKelvin <= 0;
        return isLossless && reservoir.HeatInput.Watts <= 0 ? start.DegreesCelsius
            : tank.TrySteadyTemperature(reservoir.HeatInput, reservoir.Ambient, out var steady)
                ? Math.Min(HottestCelsius, steady.DegreesCelsius)
            : HottestCelsius;
    }

    /// <summary>The moment at which a measure on the grid first falls to 0, up to an index; null where it does not.</summary>
    public double? FirstHours(double[] excess, int last)
    {
        for (var i = 0; i <= last; i++)
        {
            if (excess[i] > 0)
            {
                continue;
            }

            var back = i == 0 ? 0 : excess[i] / (excess[i] - excess[i - 1]) * (Seconds[i] - Seconds[i - 1]);
            return (Seconds[i] - back) / 3600;
        }

        return null;
    }
}
