using OilCondition.Tests.Reference;
using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition.Tests.Treatment.Kinds;

/// <summary>Rows of water.csv that a plan answers. The room of water answers the same rows by other calls, and leaves the rest to this one.</summary>
public class TreatmentReferenceTests
{
    private const string File = "water.csv";

    private static readonly Dictionary<string, Func<ReferenceCase, double>> Mapped = new(StringComparer.Ordinal)
    {
        ["ultimate water content under vacuum"] = row => End(row).WaterFloor.PartsPerMillion,
        ["equilibrium water content with head-space air"] = row => Purge(row).WaterFloor.PartsPerMillion,
        ["outlet after n single passes in series (once-through)"] = row =>
            Sump.Unit(eta: row.Number("eta"))
                .WaterAfterPasses(
                    Sump.Ppm(row.Number("C0_ppm")),
                    Sump.Ppm(row.Number("Cinf_ppm")),
                    (int)row.Number("n")
                )
                .PartsPerMillion,
    };

    public static TheoryData<string, string, string> Rows() =>
        ReferenceFolder.Theory(File, row => Mapped.ContainsKey(row.Quantity) && row.Tolerance != "guide");

    [Theory]
    [MemberData(nameof(Rows))]
    [Trait("Category", "Reference")]
    public void Agrees_with_its_source(string file, string id, string description)
    {
        description.ShouldNotBeEmpty();
        var row = ReferenceFolder.Case(file, id);
        row.ShouldAgreeOrSay(
            Mapped,
            new Dictionary<string, Func<ReferenceCase, ReferenceBehaviour>>(StringComparer.Ordinal)
            {
                ["ultimate water content under vacuum"] = Said,
                ["equilibrium water content with head-space air"] = purge =>
                    Purge(purge).WaterFloor < Curve(purge).SaturationAt(Sump.Celsius(purge.Number("t_oil_C"))).Content
                        ? ReferenceBehaviour.Unsaturated
                        : ReferenceBehaviour.Saturated,
            }
        );
    }

    private static ReferenceBehaviour Said(ReferenceCase row) =>
        End(row).Evaporates ? ReferenceBehaviour.Unsaturated : ReferenceBehaviour.Saturated;

    private static TreatmentAssessment Purge(ReferenceCase row) =>
        new HeadSpacePurge(
            MassFlow.FromKilogramsPerHour(1),
            HumidAir.FromRelativeHumidity(
                Sump.Celsius(row.Number("t_air_C")),
                RelativeHumidity.FromPercent(100 * row.Number("RH_air"))
            ),
            StandardAtmosphere.SeaLevel,
            Ratio.FromPercent(50)
        ).Assess(
            Sump.Job(
                50_000,
                1,
                Sump.Tank(start: row.Number("t_oil_C"), ambient: row.Number("t_oil_C")),
                Sump.Oil(Curve(row))
            )
        );

    private static SaturationCurve Curve(ReferenceCase row) =>
        row.Arguments["set"] switch
        {
            "M1" => PublishedSaturationCurves.TransformerMineralOil,
            "M2" => PublishedSaturationCurves.TransformerMineralOilSteeper,
            "NE" => PublishedSaturationCurves.SoyaEster,
            var other => throw new InvalidOperationException(other),
        };

    /// <summary>
    /// A floor with water mole fraction y in the gas: sweep air that itself brings y. It is described at 95 °C and one atmosphere, where p_w = y p.
    /// </summary>
    private static PurificationPlan.EndState End(ReferenceCase row)
    {
        var atmosphere = Pressure.FromPascals(row.Number("p_atm_Pa"));
        var vacuum = GaugeVacuum.FromReading(Pressure.FromPascals(row.Number("vacuum_inHg") * 3386.389), atmosphere);
        var y = row.Number("y_water");
        Ratio.FromDecimalFractions(y).DecimalFractions.ShouldBeInRange(0, 1);
        var warm = Sump.Celsius(99.9);
        var sweep =
            y >= 1
                ? SweepAir.None
                : SweepAir.FromAir(
                    MassFlow.FromKilogramsPerHour(1),
                    HumidAir.FromRelativeHumidity(
                        warm,
                        RelativeHumidity.FromPercent(100 * y * 101_325 / WaterVapour.SaturationPressure(warm).Pascals)
                    ),
                    StandardAtmosphere.SeaLevel
                );
        var celsius = row.Number("t_C");
        var job = Sump.Job(500, 299_000, Sump.Tank(start: celsius, ambient: 20), Sump.Oil(Curve(row)));
        var unit = Sump.Unit(
            kilowatt: 100,
            celsius: celsius,
            chamber: new VacuumChamber(vacuum.AbsolutePressure, sweep)
        );
        return PurificationPlan.Create(job, unit).End;
    }
}
