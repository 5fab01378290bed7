using OilCondition.Treatment;

namespace OilCondition;

/// <summary>An oil change made for the ageing of the oil: so many times as brings every aged figure back inside its limit, with a margin.</summary>
/// <remarks>x_n = x_new + h^n (x − x_new); n is the least with |x_n − x_new| ≤ m |alert − x_new| for every aged measurand; one where new oil's figure is not known.</remarks>
internal sealed class Renewal(DrainAndRefill change, int changes) : ITreatment
{
    private const int MostChanges = 3;

    public string Name => change.Name;

    public TreatmentKind? Kind => change.Kind;

    public ContaminationForms Reaches => change.Reaches;

    public TreatmentAssessment Assess(TreatmentJob job) => change.Assess(job, changes);

    /// <summary>Null where not even several changes do: the new oil lies beyond the figure itself, or too much of the old one stays.</summary>
    public static Renewal? Of(
        DrainAndRefill change,
        ConditionAssessment assessment,
        IEnumerable<MeasurandState> aged,
        double margin
    )
    {
        var most = 1;
        foreach (var state in aged)
        {
            var needed = Changes(change, assessment, state, margin);
            if (needed == 0)
            {
                return null;
            }

            most = Math.Max(most, needed);
        }

        return new Renewal(change, most);
    }

    private static int Changes(
        DrainAndRefill change,
        ConditionAssessment assessment,
        MeasurandState state,
        double margin
    )
    {
        var oil = assessment.History.Machine.Oil;
        if (
            !oil.NewReadings.TryGetValue(state.Measurand, out var fresh)
            || state.Latest is not { } latest
            || Figure(assessment, state) is not { } figure
        )
        {
            return 1;
        }

        var allowed = margin * Math.Abs(figure - fresh.Value);
        var distance = Math.Abs(latest.Reading.Value - fresh.Value);
        return Enumerable
            .Range(1, MostChanges)
            .FirstOrDefault(n => Math.Pow(change.Heel.DecimalFractions, n) * distance <= allowed);
    }

    private static double? Figure(ConditionAssessment assessment, MeasurandState state)
    {
        var figures = new FixedFigures(assessment.History.Machine.Oil, state.Measurand, assessment.Limits.Limits);
        return figures.First(state.Measurand.Worse == LimitSide.Lower ? LimitSide.Lower : LimitSide.Upper);
    }
}
