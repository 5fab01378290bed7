using OilCondition;
using OilCondition.Cleanliness;
using OilCondition.Cleanup;
using OilCondition.LabFiles;
using OilCondition.Thermal;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace CleanupJob;

/// <summary>The cooler-leak sump HP-TGB1 of the INVENTED Harrow Point station: task, unit, log. No figure is plant data.</summary>
public static class Job
{
    public static DateTimeOffset StartedAt { get; } = new(2025, 12, 10, 6, 0, 0, TimeSpan.Zero);

    public static Density OilDensity { get; } = Density.FromKilogramsPerCubicMeter(855);

    private static PumpViscosityLimit Pump { get; } =
        new(VolumeFlow.FromLitersPerMinute(5), KinematicViscosity.FromCentistokes(700));

    public static TreatmentJob Task { get; } =
        new(
            new TreatedOil(
                OilProperties.FromDensityAt15(Density.FromKilogramsPerCubicMeter(872)),
                SaturationCurve.FromTwoPoints(
                    "invented turbine oil VG 68",
                    Celsius(20),
                    Ppm(92),
                    Celsius(60),
                    Ppm(330),
                    Source.UserData("invented")
                ),
                ViscosityTemperatureLine.FromTwoPoints(
                    Celsius(40),
                    KinematicViscosity.FromCentistokes(67.5),
                    Celsius(100),
                    KinematicViscosity.FromCentistokes(8.6)
                ),
                Celsius(70)
            ),
            new Reservoir(
                Volume.FromLiters(1800),
                Celsius(34.9),
                Celsius(14),
                lossWattPerKelvin: 45,
                waterIngress: MassFlow.FromGramsPerHour(1)
            ),
            new Contamination(
                Ppm(900),
                Ratio.FromPercent(30),
                ParticleLevels.FromCode(CleanlinessCode.Parse("19/17/14"))
            ),
            new TreatmentTarget(Ppm(60)),
            TimeSpan.FromHours(240)
        );

    public static PurificationUnit Unit { get; } =
        new(
            Pump,
            Power.FromKilowatts(6),
            Celsius(60),
            new VacuumChamber(Pressure.FromPascals(1500)),
            Ratio.FromPercent(50),
            motorPower: Power.FromKilowatts(2)
        );

    public static TreatmentComparison Compare()
    {
        var loop = new SideLoop(Pump, Celsius(50), Power.FromKilowatts(6), Power.FromKilowatts(1));
        var filter = new FilterRatings(new FilterBeta(20), new FilterBeta(100), new FilterBeta(1000));
        return TreatmentComparison.Of(
            Task,
            new SettlingAndDraining(Length.FromMeters(0.8), Length.FromMicrometers(100)),
            new Centrifuge(loop, Area.FromSquareMeters(2000), Length.FromMicrometers(20), Length.FromMicrometers(3)),
            new Coalescer(loop, Ratio.FromPercent(60), 2),
            new WaterAbsorbingElements(loop, Ratio.FromPercent(50), Volume.FromLiters(0.5)),
            new VacuumDehydration(Unit),
            Train,
            new HeadSpacePurge(
                MassFlow.FromKilogramsPerHour(5),
                HumidAir.FromDewPoint(Celsius(20), Celsius(-40)),
                StandardAtmosphere.SeaLevel,
                Ratio.FromPercent(10)
            ),
            new FineFiltration(loop, filter, 1),
            new DrainAndRefill(
                Ratio.FromPercent(5),
                Ppm(40),
                ParticleLevels.FromCode(CleanlinessCode.Parse("17/15/12")),
                VolumeFlow.FromLitersPerMinute(60),
                Power.FromKilowatts(1.5)
            )
        );
    }

    /// <summary>Settle over night, heat in the tank, dry.</summary>
    public static TreatmentTrain Train { get; } =
        new(
            "settle, heat, dry",
            TrainStage.For(
                new SettlingAndDraining(Length.FromMeters(0.8), Length.FromMicrometers(100)),
                TimeSpan.FromHours(12)
            ),
            TrainStage.Heating(new TankHeater(Power.FromKilowatts(6), Area.FromSquareMeters(0.4)), Celsius(45)),
            TrainStage.Until(new VacuumDehydration(Unit))
        );

    public static DischargePump Discharge { get; } =
        new(
            Pump.FullFlow,
            height: Length.FromMeters(0.9),
            suctionLength: Length.FromMeters(1.5),
            suctionDiameter: Length.FromMillimeters(25),
            headNeeded: Length.FromMeters(0.4),
            isVariableSpeed: true
        );

    /// <summary>Its ring water is too warm for 15 hPa, as the check says.</summary>
    public static VacuumPump Vacuum { get; } =
        VacuumPump.LiquidRing(VolumeFlow.FromCubicMetersPerHour(40), Celsius(18));

    /// <summary>Invented prices: the library knows none.</summary>
    public static TreatmentPrices Prices { get; } =
        new(perHour: 15, perKilowattHour: 0.3, perElement: 80, perLitreOfNewOil: 4, perLitreOfWaste: 0.5);

    public static PurificationPlan Plan { get; } = PurificationPlan.Create(Task, Unit);

    /// <summary>The log of the moisture sensor; moments without both figures are no readings.</summary>
    public static IEnumerable<CleanupReading> Log(string path) =>
        SensorLog
            .Read(path, ColumnMap.Default)
            .Readings.Where(one =>
                one.Readings.ContainsKey(Measurands.RelativeSaturation)
                && one.Readings.ContainsKey(Measurands.OilTemperature)
            )
            .Select(one =>
                CleanupReading.Sensor(
                    one.At,
                    Ratio.FromPercent(one.Readings[Measurands.RelativeSaturation].Value),
                    Celsius(one.Readings[Measurands.OilTemperature].Value)
                )
            );

    public static CleanupMonitorOptions Monitoring { get; } =
        CleanupMonitorOptions.WhileWarm(
            StartedAt,
            Task.Target,
            Task.Oil.SaturationCurve,
            TimeSpan.FromHours(6),
            Celsius(45),
            planned: PlannedPerformance.Of(Plan)
        );

    public static CleanupLoop Loop { get; } = new(Task.Reservoir.OilVolume, Pump.FullFlow);

    /// <summary>What a record needs besides the log. The condensate is invented too; the ingress is found from the run and the physical floor of the plan.</summary>
    public static CleanupRunFacts FactsOf(double beforePpm, double condensateLitres) =>
        new(
            "HP-TGB1, Harrow Point (invented)",
            Loop,
            OilDensity,
            Ppm(beforePpm),
            condensate: Volume.FromLiters(condensateLitres),
            floorWithoutIngress: Plan.End.WaterFloor
        );

    public static CleanupRunFacts Facts { get; } = FactsOf(893, 1.35);

    public static Temperature Celsius(double celsius) => Temperature.FromDegreesCelsius(celsius);

    private static MassFraction Ppm(double ppm) => MassFraction.FromPartsPerMillion(ppm);
}
