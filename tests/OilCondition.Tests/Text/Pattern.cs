using System.Text.RegularExpressions;

namespace OilCondition.Tests.Text;

/// <summary>Patterns that tests look for in texts, with an end to their patience.</summary>
internal static class Pattern
{
    public static Regex Of(string pattern) => new(pattern, RegexOptions.None, TimeSpan.FromSeconds(10));
}
