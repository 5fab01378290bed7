using OilCondition.Viscosity;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>The flags that any treatment of a task has in common.</summary>
internal static class TreatmentDoubtsOf
{
    /// <summary>Of a task that is worked on at a temperature, without or with a pump at the start.</summary>
    public static TreatmentDoubts Job(TreatmentJob job, Temperature working, PumpFlow? atStart = null)
    {
        var curve = job.Oil.SaturationCurve;
        var start = job.Reservoir.Start;
        var hasEmulsion = job.Contamination.EmulsifiedShare.DecimalFractions > 0 && job.WaterAt(start).HasFreeWater;
        return (curve.Covers(start) && curve.Covers(working) ? TreatmentDoubts.None : TreatmentDoubts.CurveExtrapolated)
            | (hasEmulsion ? TreatmentDoubts.Emulsion : TreatmentDoubts.None)
            | (atStart is { IsReduced: true } ? TreatmentDoubts.SlowStart : TreatmentDoubts.None)
            | (
                atStart is { IsReduced: true, Oil.IsExtrapolated: true }
                    ? TreatmentDoubts.ViscosityExtrapolated
                    : TreatmentDoubts.None
            );
    }
}
