using System.Text.RegularExpressions;
using OilCondition.Tests.Architecture;

namespace OilCondition.Tests.Examples;

/// <summary>A page of a room has all that a user must know before relying on a figure of it. (Its snippets, links and figures have tests of their own.)</summary>
public partial class RoomPageTests
{
    public static TheoryData<string> Rooms =>
        [
            "advice.md",
            "cleanliness.md",
            "cleanup-curve.md",
            "cleanup-live.md",
            "control-charts.md",
            "decisions.md",
            "equipment.md",
            "limits.md",
            "planning.md",
            "prognosis.md",
            "statistics-exponential-fit.md",
            "statistics-trends.md",
            "thermal.md",
            "treatment.md",
            "viscosity.md",
            "water.md",
        ];

    [Theory]
    [MemberData(nameof(Rooms))]
    public void A_page_has_its_parts(string page)
    {
        var text = RepositoryFiles.Read("docs", page);

        text.ShouldContain("**What it answers.**");
        text.ShouldContain("```csharp");
        text.ShouldContain("\n## Ranges\n");
        text.ShouldContain("\n## Published figures\n");
        LimitsOfTheMethod().IsMatch(text).ShouldBeTrue("what the method cannot tell");
        text.ShouldContain("efused"); // what happens outside the ranges
        Do().IsMatch(text).ShouldBeTrue("what to do");
        Dont().IsMatch(text).ShouldBeTrue("what not to do");
        Caution().IsMatch(text).ShouldBeTrue("a caution");
    }

    [GeneratedRegex(@"^## (What is not known|Limits)$", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex LimitsOfTheMethod();

    [GeneratedRegex(@"^(- )?Do ", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Do();

    [GeneratedRegex(@"(^(- )?|\. )Don't ", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Dont();

    [GeneratedRegex(@"^(## |\*\*)?Caution", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Caution();
}
