using OilCondition.Cleanliness;

namespace OilCondition.Cleanup;

public sealed partial class CodeCurve
{
    /// <summary>The code of fitted counts at a moment, with the codes of the ends of their intervals.</summary>
    /// <remarks>
    /// Size by size: the three ends need not be met together. A code is a step of a factor of two, so that best, lowest and highest are often
    /// the same. The numbers carry no mark for few particles counted: a curve does not know how many were.
    /// </remarks>
    public sealed record Point
    {
        internal Point(
            DateTimeOffset at,
            CleanlinessCode code,
            CleanlinessCode lowest,
            CleanlinessCode highest,
            double confidence,
            bool coverageInDoubt,
            bool isExtrapolated
        )
        {
            At = at;
            Code = code;
            Lowest = lowest;
            Highest = highest;
            Confidence = confidence;
            CoverageInDoubt = coverageInDoubt;
            IsExtrapolated = isExtrapolated;
        }

        /// <summary>The moment.</summary>
        public DateTimeOffset At { get; }

        /// <summary>Code of the best curves.</summary>
        public CleanlinessCode Code { get; }

        /// <summary>Code of the lower ends.</summary>
        public CleanlinessCode Lowest { get; }

        /// <summary>Code of the upper ends; &gt;28 at a size whose count is not bounded from above.</summary>
        public CleanlinessCode Highest { get; }

        /// <summary>Two-sided confidence level of each size.</summary>
        public double Confidence { get; }

        /// <summary>Whether the residuals of a size follow one another so closely that its interval covers less often than it says.</summary>
        public bool CoverageInDoubt { get; }

        /// <summary>Whether the moment lies after the last reading of a size.</summary>
        public bool IsExtrapolated { get; }

        /// <summary>Code and ends.</summary>
        /// <returns>For example <c>17/15/12 (16/14/11 to 17/15/12)</c>.</returns>
        public override string ToString() =>
            Lowest.Equals(Highest) ? Code.ToString() : $"{Code} ({Lowest} to {Highest})";
    }
}
