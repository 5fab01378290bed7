using OilCondition.Cleanliness;

namespace OilCondition.Treatment;

/// <summary>The counts that a target code allows; infinite where it asks nothing.</summary>
internal readonly struct CodeLimits
{
    private readonly double[] limits;

    public CodeLimits(CleanlinessCode? code) =>
        limits = code is null
            ? [double.PositiveInfinity, double.PositiveInfinity, double.PositiveInfinity]
            : [Of(code.At4), Of(code.At6), Of(code.At14)];

    /// <summary>How far the worst size lies above its limit, as a share of the limit; 0 or less when the code is met.</summary>
    public double Excess(double at4, double at6, double at14) =>
        Math.Max(at4 / limits[0], Math.Max(at6 / limits[1], at14 / limits[2])) - 1;

    public double Excess(ParticleLevels levels) =>
        Excess(levels.At4PerMillilitre, levels.At6PerMillilitre, levels.At14PerMillilitre);

    public static double Of(ScaleNumber number) => number.HighestPerMillilitre;
}
