using OilCondition.Text;

namespace OilCondition.Cleanliness;

/// <summary>A table of class limits: for each size or range the most particles per 100 mL, limits included, from the cleanest class on.</summary>
internal sealed class ClassLimits
{
    private readonly int lowestRank;
    private readonly int[][] columns;

    public ClassLimits(int lowestRank, params int[][] columns)
    {
        this.lowestRank = lowestRank;
        this.columns = columns;
    }

    private int HighestRank => lowestRank + columns[0].Length - 1;

    /// <summary>The cleanest class whose limit the count does not pass; where classes share a limit, the cleanest of them.</summary>
    public CleanlinessClass ClassOf(int column, double countPer100Millilitres)
    {
        var index = Array.FindIndex(columns[column], limit => countPer100Millilitres <= limit);
        return index < 0 ? CleanlinessClass.Above(HighestRank) : CleanlinessClass.FromRank(lowestRank + index);
    }

    public int UpperLimit(int column, CleanlinessClass cleanlinessClass, string name) =>
        !cleanlinessClass.IsAboveTable && cleanlinessClass.Rank >= lowestRank && cleanlinessClass.Rank <= HighestRank
            ? columns[column][cleanlinessClass.Rank - lowestRank]
            : throw new ArgumentOutOfRangeException(
                name,
                $"{name} is {cleanlinessClass}; allowed: {CleanlinessClass.FromRank(lowestRank)} to {HighestRank}."
            );

    /// <summary>The count above which a class begins; nothing for the cleanest. Above this table it is the last limit.</summary>
    public int? LowerLimit(int column, CleanlinessClass cleanlinessClass, string name)
    {
        if (cleanlinessClass == CleanlinessClass.Above(HighestRank))
        {
            return columns[column][HighestRank - lowestRank];
        }

        UpperLimit(column, cleanlinessClass, name);
        return cleanlinessClass.Rank == lowestRank ? null : columns[column][cleanlinessClass.Rank - lowestRank - 1];
    }

    public static double Count(double countPer100Millilitres, string name) =>
        Guard.NotNegative(countPer100Millilitres, "per 100 mL", name);
}
