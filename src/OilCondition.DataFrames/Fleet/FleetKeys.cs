using OilCondition.Prognosis;
using OilCondition.Text;

namespace OilCondition.DataFrames;

/// <summary>Columns that several frames of a fleet have alike.</summary>
internal static class FleetKeys
{
    /// <summary>Which machine, which oil, and when it was assessed.</summary>
    public static FrameShape<T> Of<T>(Func<T, ConditionAssessment> of) =>
        new FrameShape<T>()
            .Text(FrameNames.Machine, row => of(row).History.Machine.Id)
            .Text(FrameNames.Charge, row => of(row).Charge.ToString())
            .Moment(FrameNames.AsOfUtc, row => of(row).Options.AsOf);

    public static FrameShape<T> NextSample<T>(this FrameShape<T> shape, Func<T, NextSample?> of) =>
        shape
            .Moment("nextSampleUtc", row => of(row)?.At)
            .Text("nextSampleReason", row => of(row) is { } next ? PlainText.Kebab(next.Reason) : null)
            .Flag("nextSampleOverdue", row => of(row)?.IsOverdue)
            .Number("chanceUnseen", row => of(row)?.ChanceUnseen);
}
