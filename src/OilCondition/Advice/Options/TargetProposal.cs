using OilCondition.Cleanliness;
using OilCondition.Text;
using OilCondition.Treatment;
using OilCondition.Water;
using UnitsNet;

namespace OilCondition;

/// <summary>What a treatment of this machine should reach: dry at the coldest temperature that its oil sees and within its limits, with a margin.</summary>
/// <remarks>
/// <para>Water = m min(alert figure, alert figure of relative saturation × S(running), S(standstill)).   m: margin.   S: saturation of the oil.</para>
/// <para>
/// Code: at each size that is limited and asked for, one number below the highest that the alert figure allows. What needs no treatment is asked to stay
/// within its limits, so that new oil or a long treatment does not make it worse.
/// </para>
/// </remarks>
public sealed class TargetProposal
{
    private TargetProposal(
        MassFraction? water,
        WaterBound? bound,
        SaturationPoint? standstill,
        double? limit,
        double? stated,
        CleanlinessCode? code,
        bool isCodeAsked,
        Ratio margin
    )
    {
        IsCodeToBeReached = isCodeAsked;
        Water = water;
        Bound = bound;
        Standstill = standstill;
        LimitMgPerKg = limit;
        StatedMgPerKg = stated;
        Code = code;
        Margin = margin;
    }

    /// <summary>What sets the water.</summary>
    public enum WaterBound
    {
        /// <summary>The alert figure of the machine's limits.</summary>
        Limit,

        /// <summary>What the oil holds dissolved when it has cooled down.</summary>
        Standstill,

        /// <summary>Nothing: water needs no treatment, and is only to stay within its limits.</summary>
        AsItIs,
    }

    /// <summary>All water that may remain; null where nothing is known to ask for.</summary>
    public MassFraction? Water { get; }

    /// <summary>What sets the water; null where it is not asked.</summary>
    public WaterBound? Bound { get; }

    /// <summary>What the oil holds dissolved at standstill; null where its saturation is not known.</summary>
    public SaturationPoint? Standstill { get; }

    /// <summary>The alert figure of the water, in mg/kg, that of a sensor at running temperature included; null for none.</summary>
    public double? LimitMgPerKg { get; }

    /// <summary>The target of the latest treatment of the water as it is recorded, in mg/kg; null where there was none.</summary>
    public double? StatedMgPerKg { get; }

    /// <summary>The code to reach or to keep; null where none is known to ask for.</summary>
    public CleanlinessCode? Code { get; }

    /// <summary>Whether the code is to be reached; else it is only to be kept, which matters where new oil is filled.</summary>
    public bool IsCodeToBeReached { get; }

    /// <summary>Share of a figure at which the target is set.</summary>
    public Ratio Margin { get; }

    /// <summary>Whether the recorded target would leave free water at standstill: it lies above what the oil holds then.</summary>
    public bool StandstillBreaksStated => StatedMgPerKg > Standstill?.Content.PartsPerMillion;

    /// <summary>Whether free water comes out at standstill before the alert figure is passed.</summary>
    public bool StandstillBreaksLimit => LimitMgPerKg > Standstill?.Content.PartsPerMillion;

    /// <summary>Whether water is to be reached; else it is only to be kept, or nothing is known to ask for.</summary>
    internal bool IsWaterToBeReached => Bound is WaterBound.Limit or WaterBound.Standstill;

    /// <summary>What is to be reached and what is to be kept: what new oil is held against.</summary>
    internal TreatmentTarget Whole => TargetOf(Water, Code);

    /// <summary>What is to be reached: what a treatment of the oil that is there runs for.</summary>
    internal TreatmentTarget ToBeReached =>
        TargetOf(IsWaterToBeReached ? Water : null, IsCodeToBeReached ? Code : null);

    /// <summary>A target of nothing is one that any oil meets.</summary>
    private static TreatmentTarget TargetOf(MassFraction? water, CleanlinessCode? code) =>
        water is null && code is null
            ? new TreatmentTarget(MassFraction.FromPartsPerMillion(PhysicalRange.HighestWaterMgPerKg))
            : new TreatmentTarget(water, code);

    /// <summary>For an assessed machine and what needs a treatment in it.</summary>
    internal static TargetProposal Of(
        ConditionAssessment assessment,
        IReadOnlyCollection<ProblemTopic> needs,
        Ratio margin
    )
    {
        var machine = assessment.History.Machine;
        var standstill = machine.Oil.SaturationCurve?.SaturationAt(machine.StandstillTemperature);
        var limit = WaterLimit(assessment);
        var (water, bound) = needs.Contains(ProblemTopic.Water)
            ? ToReach(limit, standstill, margin)
            : ToKeep(limit, assessment.Water);
        return new TargetProposal(
            water,
            bound,
            standstill,
            limit,
            Stated(assessment),
            CodeOf(assessment, needs.Contains(ProblemTopic.Dirt)),
            needs.Contains(ProblemTopic.Dirt),
            margin
        );
    }

    private static (MassFraction?, WaterBound?) ToReach(double? limit, SaturationPoint? standstill, Ratio margin)
    {
        var cold = standstill?.Content.PartsPerMillion;
        return (limit, cold) switch
        {
            (null, null) => (null, null),
            (_, { } held) when !(limit <= held) => (Share(held, margin), WaterBound.Standstill),
            _ => (Share(limit!.Value, margin), WaterBound.Limit),
        };
    }

    private static (MassFraction?, WaterBound?) ToKeep(double? limit, WaterInOil water) =>
        limit is { } figure && water is WaterInOil.Split split
            ? (MassFraction.FromPartsPerMillion(Math.Max(figure, split.Point.Reading.Value)), WaterBound.AsItIs)
            : (null, null);

    private static MassFraction Share(double figure, Ratio margin) =>
        MassFraction.FromPartsPerMillion(figure * margin.DecimalFractions);

    /// <summary>The stricter of the alert figures of content and of relative saturation at running temperature.</summary>
    private static double? WaterLimit(ConditionAssessment assessment)
    {
        var machine = assessment.History.Machine;
        double? Figure(Measurand measurand) =>
            new FixedFigures(machine.Oil, measurand, assessment.Limits.Limits).First(LimitSide.Upper);
        var content = Figure(Measurands.WaterContent);
        var relative =
            Figure(Measurands.RelativeSaturation) is { } percent && machine.Oil.SaturationCurve is { } curve
                ? percent / 100 * curve.SaturationAt(machine.RunningTemperature).Content.PartsPerMillion
                : (double?)null;
        return content is null || relative < content ? relative ?? content : content;
    }

    private static double? Stated(ConditionAssessment assessment) =>
        assessment
            .History.Events.OfType<TreatmentRun>()
            .LastOrDefault(run => run.At >= assessment.Charge.Since && run.Measurand.Equals(Measurands.WaterContent))
            ?.Target;

    private static CleanlinessCode? CodeOf(ConditionAssessment assessment, bool isToBeReached)
    {
        if (assessment.Cleanliness is not { } now)
        {
            return null;
        }

        ScaleNumber Number(Measurand size, ScaleNumber counted)
        {
            if (
                new FixedFigures(assessment.History.Machine.Oil, size, assessment.Limits.Limits).First(LimitSide.Upper)
                is not { } figure
            )
            {
                return ScaleNumber.NotCounted;
            }

            var allowed = HighestWithin(figure);
            var asked = isToBeReached ? allowed - 1 : Math.Max(allowed, HighestWithin(counted.HighestPerMillilitre));
            return asked < 0 ? ScaleNumber.NotCounted : ScaleNumber.Of(asked);
        }

        var code = new CleanlinessCode(
            Number(Measurands.Particles4, now.At4),
            Number(Measurands.Particles6, now.At6),
            Number(Measurands.Particles14, now.At14)
        );
        return new[] { code.At4, code.At6, code.At14 }.All(one => one == ScaleNumber.NotCounted) ? null : code;
    }

    /// <summary>The highest scale number whose counts all lie within a figure; −1 for none.</summary>
    private static int HighestWithin(double perMillilitre)
    {
        const int Highest = 28;
        const double Rounding = 1 + 1e-9;
        var number = Highest;
        while (number >= 0 && !(Iso4406.UpperLimitPerMillilitre(number) <= perMillilitre * Rounding))
        {
            number--;
        }

        return number;
    }

    /// <summary>Target, what sets it, and what standstill would break.</summary>
    /// <returns>For example <c>61 mg/kg of water, 0.8 of the 76 mg/kg that the oil holds at 10 °C</c>.</returns>
    public override string ToString() => Sentences.English.Of(this);
}
