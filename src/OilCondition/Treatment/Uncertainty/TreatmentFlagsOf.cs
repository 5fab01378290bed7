using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>The flags that any treatment of a task has in common.</summary>
internal static class TreatmentFlagsOf
{
    /// <summary>Of a task that is worked on at a temperature, without or with a pump at the start.</summary>
    public static TreatmentFlags Job(TreatmentJob job, Temperature working, PumpFlow? atStart = null)
    {
        var curve = job.Oil.SaturationCurve;
        var start = job.Reservoir.Start;
        var hasEmulsion = job.Contamination.EmulsifiedShare.DecimalFractions > 0 && job.WaterAt(start).HasFreeWater;
        return (curve.Covers(start) && curve.Covers(working) ? TreatmentFlags.None : TreatmentFlags.CurveExtrapolated)
            | (hasEmulsion ? TreatmentFlags.Emulsion : TreatmentFlags.None)
            | (atStart is { IsReduced: true } ? TreatmentFlags.SlowStart : TreatmentFlags.None)
            | (
                atStart is { IsReduced: true, Oil.IsExtrapolated: true }
                    ? TreatmentFlags.ViscosityExtrapolated
                    : TreatmentFlags.None
            );
    }
}
