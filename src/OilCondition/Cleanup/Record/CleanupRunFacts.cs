using OilCondition.Text;
using OilCondition.Treatment;
using UnitsNet;

namespace OilCondition.Cleanup;

/// <summary>What a record needs besides the readings: the machine, the loop, the content before, the condensate.</summary>
public sealed class CleanupRunFacts
{
    /// <summary>States the facts. Name the arguments that have a default.</summary>
    /// <param name="machine">Name of the machine.</param>
    /// <param name="loop">Charge and flow.</param>
    /// <param name="oilDensity">Density of the oil, 500 to 1500 kg/m³.</param>
    /// <param name="before">All water before the run, by titration: 0 to 500 000 mg/kg.</param>
    /// <param name="volumePassed">Oil passed by the meter, 0 to 10¹² L; null for flow times duration.</param>
    /// <param name="condensate">Water collected, 0 to 10⁹ L; null where it was not measured.</param>
    /// <param name="condensateError">How far the condensate may be out, relative, 0 to 1; null for 0.1 (ours).</param>
    /// <param name="reboundCheckAfter">Time after the end at which to sample for rebound, 1 h to a year; null for 24 h (ours).</param>
    /// <param name="waterIngress">Water that came in during the run, 0 to 10⁶ kg/h; null where it was not measured.</param>
    /// <param name="floorWithoutIngress">Content that the purifier would reach without ingress, 0 to 500 000 mg/kg, from which the ingress is found where it was not measured; null where it is not known.</param>
    /// <param name="exhaustShare">Share of the water drawn off that leaves as vapour with the exhaust, 0 to 1, as a plan gives it (<see cref="PurificationPlan.ExhaustShare"/>); 0 where all is condensed, null where it is not known.</param>
    /// <exception cref="ArgumentNullException">The loop or the name is missing.</exception>
    /// <exception cref="ArgumentException">The name is blank.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public CleanupRunFacts(
        string machine,
        CleanupLoop loop,
        Density oilDensity,
        MassFraction before,
        Volume? volumePassed = null,
        Volume? condensate = null,
        Ratio? condensateError = null,
        TimeSpan? reboundCheckAfter = null,
        MassFlow? waterIngress = null,
        MassFraction? floorWithoutIngress = null,
        Ratio? exhaustShare = null
    )
    {
        Machine = Guard.NotBlank(machine);
        Loop = Guard.NotNull(loop);
        PhysicalRange.OilDensity(oilDensity);
        PhysicalRange.Water(before);
        Guard.InRange(volumePassed?.Liters ?? 0, 0, CleanupLoop.Largest, "L", nameof(volumePassed));
        Guard.InRange(condensate?.Liters ?? 0, 0, 1e9, "L", nameof(condensate));
        var error = condensateError ?? Ratio.FromDecimalFractions(0.1);
        Guard.InRange(error.DecimalFractions, 0, 1, "(ratio)", nameof(condensateError));
        var after = reboundCheckAfter ?? Elapsed.FromHours(24);
        Guard.InRange(after.TotalHours, 1, 8760, "h", nameof(reboundCheckAfter));
        Guard.InRange(waterIngress?.KilogramsPerHour ?? 0, 0, 1e6, "kg/h", nameof(waterIngress));
        Guard.InRange(
            floorWithoutIngress?.PartsPerMillion ?? 0,
            0,
            Measurands.WaterContent.HighestPlausible,
            "mg/kg",
            nameof(floorWithoutIngress)
        );
        Guard.InRange(exhaustShare?.DecimalFractions ?? 0, 0, 1, "(ratio)", nameof(exhaustShare));
        ExhaustShare = exhaustShare;
        WaterIngress = waterIngress;
        FloorWithoutIngress = floorWithoutIngress;
        OilDensity = oilDensity;
        Before = before;
        VolumePassed = volumePassed;
        Condensate = condensate;
        CondensateError = error;
        ReboundCheckAfter = after;
    }

    /// <summary>Name of the machine.</summary>
    public string Machine { get; }

    /// <summary>Charge and flow.</summary>
    public CleanupLoop Loop { get; }

    /// <summary>Density of the oil.</summary>
    public Density OilDensity { get; }

    /// <summary>All water before the run.</summary>
    public MassFraction Before { get; }

    /// <summary>Oil passed by the meter; null where there is none.</summary>
    public Volume? VolumePassed { get; }

    /// <summary>Water collected; null where it was not measured.</summary>
    public Volume? Condensate { get; }

    /// <summary>How far the condensate may be out, relative.</summary>
    public Ratio CondensateError { get; }

    /// <summary>Water that came in during the run; null where it was not measured.</summary>
    public MassFlow? WaterIngress { get; }

    /// <summary>Content that the purifier would reach without ingress; null where it is not known.</summary>
    public MassFraction? FloorWithoutIngress { get; }

    /// <summary>Share of the water drawn off that leaves as vapour with the exhaust; null where it is not known.</summary>
    public Ratio? ExhaustShare { get; }

    /// <summary>Time after the end at which to sample for rebound.</summary>
    public TimeSpan ReboundCheckAfter { get; }

    /// <summary>Machine, loop and water before.</summary>
    /// <returns>One line.</returns>
    public override string ToString() =>
        $"{Machine}: {Loop}, {PlainText.Number(Before.PartsPerMillion)} mg/kg before"
        + (Condensate is { } collected ? $", {PlainText.Number(collected.Liters)} L collected" : "");
}
