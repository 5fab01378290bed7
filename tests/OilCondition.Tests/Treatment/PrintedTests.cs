using System.Globalization;
using OilCondition.Cleanliness;
using OilCondition.Treatment;
using OilCondition.Viscosity;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Treatment;

/// <summary>
/// What an analyst prints. Figures that are not stated by the case itself are those of the closed forms in the tests beside this one: floor
/// 302.94 × 100/25 042 = 1.21 mg/kg, ln(198.79/3.79)/0.42 = 9.43 h, and a fifth of it saved by a quarter more flow; a change with a heel of 10 % takes 2 h.
/// </summary>
public class PrintedTests
{
    private static readonly TreatmentJob Warm = Sump.Job(200, 5, Sump.Tank(start: 65, ambient: 65, loss: 0));

    private static readonly PurificationUnit Unit = Sump.Unit(pascal: 100);

    private static readonly SideLoop Loop = new(
        new PumpViscosityLimit(VolumeFlow.FromLitersPerMinute(40), KinematicViscosity.FromCentistokes(700)),
        Sump.Celsius(50),
        Power.FromKilowatts(12)
    );

    private static readonly DrainAndRefill Change = new(
        Ratio.FromPercent(10),
        Sump.Ppm(50),
        ParticleLevels.FromCode(CleanlinessCode.Parse("17/15/12")),
        VolumeFlow.FromLitersPerMinute(60),
        Power.FromKilowatts(2)
    );

    private static readonly TreatmentJob Wet = Sump.Job(1000, 100);

    private static readonly FineFiltration Filtration = new(Loop, Sump.Filter, 1);

    public static TheoryData<object, string> Cases() =>
        new()
        {
            {
                Sump.Job(1500, 90, emulsified: 0.2, targetCode: "18/16/13"),
                "2000 L of oil with 1500 mg/kg of water, 20 % of the free water emulsified, 20/18/15; target 90 mg/kg, 18/16/13"
            },
            { Sump.Job(1500, 90).Contamination, "1500 mg/kg of water, 20/18/15" },
            { new TreatmentTarget(code: CleanlinessCode.Parse("18/16/13")), "18/16/13" },
            {
                Sump.Tank(ingressGramPerHour: 10),
                "2000 L at 20 °C, surroundings 20 °C, loss 40 W/K, 10 g/h of water comes in"
            },
            { Sump.Oil(Sump.Turbine, highest: 80), "invented turbine oil, at most 80 °C" },
            { new ParticleLevels(10_000, 2500, 320), "20/18/15 (10000/2500/320 per mL)" },
            { new ParticleIngression(20_000, 8000, 400), "20000/8000/400 particles/min at 4/6/14 µm(c)" },
            { Sump.Filter, "β 75/200/1000" },
            { Loop, "40 L/min at 50 °C, heater 12 kW" },
            {
                Sump.Unit(airKilogramPerHour: 1, filter: Sump.Filter),
                "20 L/min at 65 °C, heater 18 kW, 65.1 hPa, 1 kg/h of sweep air, β 75/200/1000"
            },
            {
                new VacuumChamber(
                    Pressure.FromPascals(5000),
                    SweepAir.None,
                    VolumeFlow.FromCubicMetersPerHour(20)
                ).WithCondenserBeforePump(Sump.Celsius(15)),
                "50 hPa, pump 20 m³/h, condenser at 15 °C"
            },
            { new VacuumDehydration(Unit), "vacuum dehydration, 20 L/min at 65 °C, heater 18 kW, 1 hPa" },
            { Change, "drain and refill, 10 % stays, new oil 50 mg/kg, 17/15/12" },
            { Filtration, "fine filtration, β 75/200/1000, 40 L/min at 50 °C, heater 12 kW" },
            {
                new SettlingAndDraining(Length.FromMeters(1.2), Length.FromMicrometers(100)),
                "settling and draining, drops of 100 µm through 1.2 m"
            },
            {
                new Centrifuge(
                    Loop,
                    Area.FromSquareMeters(3000),
                    Length.FromMicrometers(20),
                    Length.FromMicrometers(3)
                ),
                "centrifuge, Σ 3000 m², 40 L/min at 50 °C, heater 12 kW"
            },
            {
                new Coalescer(Loop, Ratio.FromPercent(60), 2),
                "coalescer, 60 % a pass, 40 L/min at 50 °C, heater 12 kW"
            },
            {
                new WaterAbsorbingElements(Loop, Ratio.FromPercent(50), Volume.FromLiters(0.5)),
                "absorbing elements of 0.5 L, 50 % a pass, 40 L/min at 50 °C, heater 12 kW"
            },
            {
                new HeadSpacePurge(
                    MassFlow.FromKilogramsPerHour(5),
                    HumidAir.FromDewPoint(Sump.Celsius(20), Sump.Celsius(-40)),
                    StandardAtmosphere.SeaLevel,
                    Ratio.FromPercent(60)
                ),
                "head-space purge, 5 kg/h of air"
            },
            { new TreatmentPrices(perHour: 10, perKilowattHour: 0.5), "10 per h, 0.5 per kWh" },
            { new TreatmentPrices(), "no prices" },
            {
                PurificationPlan.Create(Warm, Unit),
                "water in 9.43 h, particles not asked; floor 1.21 mg/kg, oil at 65 °C"
            },
            {
                PurificationPlan.Create(Warm, Unit).States[0],
                "0 h: 65 °C, 200 mg/kg, 20/18/15, 0 kWh, limited by removal per pass"
            },
            {
                PurificationPlan
                    .Create(
                        Sump.Job(
                            200,
                            5,
                            Sump.Tank(start: 65, ambient: 65, loss: 0, ingressGramPerHour: 100_000),
                            horizonHours: 1
                        ),
                        Unit
                    )
                    .End,
                "floor 1.21 mg/kg, no level: more water comes in than leaves, oil at 65 °C"
            },
            {
                PlanSensitivity.Of(Warm, Unit).Rows.Single(row => row.Setting == PlanSensitivity.Setting.Flow),
                "flow 20 to 25 L/min: saves 1.89 h"
            },
            { Change.Assess(Wet), "drain and refill: water in 2 h, particles not asked, floor 50 mg/kg" },
            {
                Filtration.Assess(Wet),
                "fine filtration: water not reached (not touched), particles not asked, floor 1000 mg/kg"
            },
            {
                Costs(new TreatmentPrices(perHour: 10, perLitreOfNewOil: 3)),
                "at least 10820; no price for heat and electricity, waste"
            },
            { Costs(new TreatmentPrices(perHour: 10, perLitreOfNewOil: 3)).Items[0], "hire and attendance 2 h: 20" },
            { Costs(new TreatmentPrices()).Items[2], "new oil 3600 L: no price" },
            {
                TreatmentComparison.Of(Wet, Filtration, Change),
                "treatment             water               particles           floor mg/kg   hours    kWh       uses\n"
                    + "drain and refill      in 2 h              not asked                    50       2      4 3600 L oil\n"
                    + "fine filtration       not touched         not asked                  1000       -      -          -\n"
            },
        };

    [Theory]
    [MemberData(nameof(Cases), DisableDiscoveryEnumeration = true)]
    public void Prints_itself_the_same_in_every_culture(object printed, string text)
    {
        var before = CultureInfo.CurrentCulture;
        var comma = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        comma.NumberFormat.NumberDecimalSeparator = ",";
        try
        {
            CultureInfo.CurrentCulture = comma;
            printed.ToString().ShouldBe(text);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    /// <summary>No public type of the room that is not an enumeration, an interface or a static class prints its name only.</summary>
    [Fact]
    public void Everything_prints_itself()
    {
        var mute = typeof(TreatmentJob)
            .Assembly.GetExportedTypes()
            .Where(type => type.Namespace == typeof(TreatmentJob).Namespace)
            .Where(type => type.IsClass && !(type.IsAbstract && type.IsSealed))
            .Where(type => type.GetMethod("ToString", [])!.DeclaringType != type)
            .Select(type => type.Name);

        mute.ShouldBeEmpty();
    }

    private static TreatmentCost Costs(TreatmentPrices prices) =>
        Change.Assess(Wet).TryCostAt(prices, out var cost) ? cost : throw new InvalidOperationException();
}
