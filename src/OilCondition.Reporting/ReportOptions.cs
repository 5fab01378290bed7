using OilCondition.Text;

namespace OilCondition.Reporting;

/// <summary>What a report has beside the assessments, and in which words.</summary>
public sealed class ReportOptions
{
    /// <summary>Options.</summary>
    /// <param name="note">A remark under the title; empty for none.</param>
    /// <param name="decisions">What can be done about the machines; null for none. Each must be of one of the assessments.</param>
    /// <param name="calendar">Where the plant's unit goes next, as plain text in lines; empty for none.</param>
    /// <param name="pictures">Pictures of the first page, such as the unit's calendar; null for none.</param>
    /// <param name="picturesOf">The pictures of a machine; null for none.</param>
    /// <param name="texts">The words; English where left out.</param>
    public ReportOptions(
        string note = "",
        IReadOnlyList<TreatmentDecision>? decisions = null,
        string calendar = "",
        IReadOnlyList<ReportPicture>? pictures = null,
        Func<ConditionAssessment, IReadOnlyList<ReportPicture>>? picturesOf = null,
        ReportTexts? texts = null
    )
    {
        Note = Guard.NotNull(note);
        Decisions = decisions ?? [];
        Calendar = Guard.NotNull(calendar);
        Pictures = pictures ?? [];
        PicturesOf = picturesOf ?? (_ => []);
        Texts = texts ?? ReportTexts.English;
    }

    /// <summary>A remark under the title.</summary>
    public string Note { get; }

    /// <summary>What can be done about the machines.</summary>
    public IReadOnlyList<TreatmentDecision> Decisions { get; }

    /// <summary>Where the plant's unit goes next.</summary>
    public string Calendar { get; }

    /// <summary>Pictures of the first page.</summary>
    public IReadOnlyList<ReportPicture> Pictures { get; }

    /// <summary>The pictures of a machine.</summary>
    public Func<ConditionAssessment, IReadOnlyList<ReportPicture>> PicturesOf { get; }

    /// <summary>The words.</summary>
    public ReportTexts Texts { get; }
}
