using OilCondition.Text;
using UnitsNet;

namespace OilCondition.Treatment;

/// <summary>A charge pumped through a purifier from tank to tank, n times, instead of round a loop.</summary>
/// <remarks>
/// C_n = floor + (1 − η)^n (C_0 − floor): all oil passes exactly n times (derived). In a loop of n turnovers part of it passes more often and part never,
/// exp(−η n): at η = 0.8 three passes leave 0.8 % of the excess, three turnovers 9 %. It needs a second clean tank, and a machine out of service.
/// </remarks>
public static class BatchPasses
{
    private const int Most = 1000;

    /// <summary>Content after a number of passes.</summary>
    /// <param name="start">Content at the start, 0 or more, any unit.</param>
    /// <param name="floor">Floor of the purifier, 0 or more, in the same unit.</param>
    /// <param name="removalPerPass">Removal per pass on the excess over the floor, η, above 0 up to 1.</param>
    /// <param name="passes">Number of passes, 0 to 1000.</param>
    /// <returns>The content, in the same unit.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static double ValueAfter(double start, double floor, Ratio removalPerPass, int passes)
    {
        Guard.InRange(start, 0, 1e12, "");
        Guard.InRange(floor, 0, 1e12, "");
        var efficiency = Guard.InRange(removalPerPass.DecimalFractions, 1e-9, 1, "(ratio)", nameof(removalPerPass));
        Guard.InRange(passes, 0, Most, "passes");
        return floor + (start - floor) * Math.Pow(1 - efficiency, passes);
    }

    /// <summary>The passes that it takes to a target.</summary>
    /// <param name="start">Content at the start, 0 or more, any unit.</param>
    /// <param name="floor">Floor of the purifier, 0 or more, in the same unit.</param>
    /// <param name="target">Content to reach, in the same unit.</param>
    /// <param name="removalPerPass">Removal per pass, η, above 0 up to 1.</param>
    /// <param name="passes">Fewest whole passes; 0 where it is so from the start, or where the method returns false.</param>
    /// <returns>False if the floor does not lie below the target, or 1000 passes do not suffice.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument lies outside its range.</exception>
    public static bool TryPassesTo(double start, double floor, double target, Ratio removalPerPass, out int passes)
    {
        Guard.InRange(target, 0, 1e12, "");
        var found = Enumerable
            .Range(0, Most + 1)
            .Where(n => ValueAfter(start, floor, removalPerPass, n) <= target)
            .Select(n => (int?)n)
            .FirstOrDefault();
        passes = found ?? 0;
        return found.HasValue;
    }
}
