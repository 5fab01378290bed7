using OilCondition.Cleanliness;
using OilCondition.Thermal;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Benchmarks.Quality;

/// <summary>
/// A tank with a vacuum unit on a side loop, stepped through time by its own few lines: Magnus' vapour pressure, a straight line of log S over 1/T, ideal
/// gases. What the library plans for the same plant is asked from the library; what happens is not.
/// </summary>
public sealed record DryingTank(
    double Litres,
    double LitresPerHour,
    double Removal,
    double PressurePascal,
    double SweepKilogramPerHour,
    double PlannedGramPerHour,
    double SaturationAt20Ppm,
    double SaturationAt60Ppm,
    double Celsius = 65
)
{
    private const double DensityKilogramPerLitre = 0.85;
    private const double StepHours = 0.05;

    public static DateTimeOffset Start { get; } = new(2031, 4, 8, 6, 0, 0, TimeSpan.FromHours(2));

    /// <summary>What really goes on; each a function of the hours since the start.</summary>
    public Func<double, double> TrueCelsius { get; init; } = _ => double.NaN;

    public Func<double, double> TruePascal { get; init; } = _ => double.NaN;

    public Func<double, double> TrueSweepShare { get; init; } = _ => 1;

    public Func<double, double> TrueFlowShare { get; init; } = _ => 1;

    public Func<double, double> TrueGramPerHour { get; init; } = _ => double.NaN;

    /// <summary>Water that lies at the bottom at the start, mg per kg of oil, and is stirred up within hours.</summary>
    public double BottomPpm { get; init; }

    public double StirHours { get; init; } = 1.2;

    public double OilKilograms => Litres * DensityKilogramPerLitre;

    public double SaturationPpm(double celsius)
    {
        var b = Math.Log(SaturationAt60Ppm / SaturationAt20Ppm) / (1 / 293.15 - 1 / 333.15);
        return SaturationAt20Ppm * Math.Exp(b * (1 / 293.15 - 1 / (celsius + 273.15)));
    }

    /// <summary>Contents, all water in mg/kg, at each step of 0.05 h.</summary>
    public double[] Course(double startPpm, double hours)
    {
        var contents = new double[(int)Math.Round(hours / StepHours) + 1];
        contents[0] = startPpm;
        var bottom = BottomPpm;
        for (var i = 1; i < contents.Length; i++)
        {
            var hour = (i - 1) * StepHours;
            var now = contents[i - 1];
            var half = now + Slope(hour, now, bottom) * StepHours / 2;
            contents[i] = Math.Max(0, now + Slope(hour + StepHours / 2, half, bottom) * StepHours);
            bottom *= Math.Exp(-StepHours / StirHours);
        }

        return contents;
    }

    public static double At(double[] course, double hour) => course[(int)Math.Round(hour / StepHours)];

    public double CelsiusAt(double hour) => double.IsNaN(TrueCelsius(hour)) ? Celsius : TrueCelsius(hour);

    /// <summary>Water that the unit takes out at a content, mg per kg of oil and hour.</summary>
    public double RemovedPerHour(double hour, double ppm)
    {
        var celsius = CelsiusAt(hour);
        var pascal = double.IsNaN(TruePascal(hour)) ? PressurePascal : TruePascal(hour);
        var air = SweepKilogramPerHour * TrueSweepShare(hour) / 0.028965;
        var moisture = SweepKilogramPerHour * TrueSweepShare(hour) * SweepRatio / 0.018015;
        var perPpm = OilKilograms * 1e-6 / 0.018015;
        var k = Removal * LitresPerHour * TrueFlowShare(hour) / Litres;
        var vapourPascal = 611.2 * Math.Exp(17.62 * celsius / (243.12 + celsius));
        if (air <= 0 && pascal >= vapourPascal)
        {
            return 0;
        }

        double Activity(double removed) =>
            (air <= 0 ? 1 : Math.Max(0, moisture + removed * perPpm) / (air + Math.Max(0, moisture + removed * perPpm)))
            * pascal
            / vapourPascal;
        var (low, high) = (-moisture / perPpm, k * ppm);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            var isLess = k * (ppm - SaturationPpm(celsius) * Activity(middle)) > middle;
            (low, high) = isLess ? (middle, high) : (low, middle);
        }

        var found = (low + high) / 2;
        return air <= 0 ? Math.Max(0, found) : found;
    }

    public PurificationPlan Plan(double startPpm, double targetPpm)
    {
        var curve = SaturationCurve.FromTwoPoints(
            "invented",
            Temperature.FromDegreesCelsius(20),
            MassFraction.FromPartsPerMillion(SaturationAt20Ppm),
            Temperature.FromDegreesCelsius(60),
            MassFraction.FromPartsPerMillion(SaturationAt60Ppm),
            Source.UserData("invented")
        );
        var oil = new TreatedOil(
            OilProperties.FromDensityAt15(Density.FromKilogramsPerCubicMeter(877)),
            curve,
            ViscosityTemperatureLine.FromTwoPoints(
                Temperature.FromDegreesCelsius(40),
                KinematicViscosity.FromCentistokes(46),
                Temperature.FromDegreesCelsius(100),
                KinematicViscosity.FromCentistokes(6.8)
            ),
            Temperature.FromDegreesCelsius(80)
        );
        var job = new TreatmentJob(
            oil,
            new Reservoir(
                Volume.FromLiters(Litres),
                Temperature.FromDegreesCelsius(40),
                Temperature.FromDegreesCelsius(20),
                60,
                MassFlow.FromGramsPerHour(PlannedGramPerHour)
            ),
            new Contamination(
                MassFraction.FromPartsPerMillion(startPpm),
                Ratio.Zero,
                ParticleLevels.FromCode(CleanlinessCode.Parse("18/16/13"))
            ),
            new TreatmentTarget(MassFraction.FromPartsPerMillion(targetPpm)),
            TimeSpan.FromHours(400)
        );
        return PurificationPlan.Create(
            job,
            new PurificationUnit(
                new PumpViscosityLimit(
                    VolumeFlow.FromLitersPerHour(LitresPerHour),
                    KinematicViscosity.FromCentistokes(700)
                ),
                Power.FromKilowatts(LitresPerHour / 50),
                Temperature.FromDegreesCelsius(Celsius),
                new VacuumChamber(
                    Pressure.FromPascals(PressurePascal),
                    SweepKilogramPerHour > 0
                        ? SweepAir.FromAir(
                            MassFlow.FromKilogramsPerHour(SweepKilogramPerHour),
                            HumidAir.FromDewPoint(
                                Temperature.FromDegreesCelsius(20),
                                Temperature.FromDegreesCelsius(8)
                            ),
                            Pressure.FromPascals(101_325)
                        )
                        : null
                ),
                Ratio.FromDecimalFractions(Removal)
            )
        );
    }

    /// <summary>Moisture of the sweep air, air of 8 °C dew point: 0.0067 kg/kg by the same vapour pressure.</summary>
    private static double SweepRatio
    {
        get
        {
            var vapour = 611.2 * Math.Exp(17.62 * 8 / (243.12 + 8));
            return 0.622 * vapour / (101_325 - vapour);
        }
    }

    private double Slope(double hour, double ppm, double bottomPpm)
    {
        var gram = double.IsNaN(TrueGramPerHour(hour)) ? PlannedGramPerHour : TrueGramPerHour(hour);
        return 1000 * gram / OilKilograms + bottomPpm / StirHours - RemovedPerHour(hour, ppm);
    }
}
