#if !NETSTANDARD_BUILD
extern alias charts;
#endif

using System.Reflection;
using System.Text.RegularExpressions;
using OilCondition.ControlCharts;
using OilCondition.LabFiles;

namespace OilCondition.Tests.Architecture;

/// <summary>docs/vocabulary.md is the contract on names.</summary>
public partial class VocabularyTests
{
    private static readonly Assembly[] Packages =
    [
        typeof(Source).Assembly,
        typeof(EwmaChart).Assembly,
        typeof(LabFile).Assembly,
        typeof(OilCondition.Spreadsheets.Spreadsheet).Assembly,
#if !NETSTANDARD_BUILD
        typeof(OilCondition.DataFrames.OilRecords).Assembly,
        typeof(charts::OilCondition.Charts.Chart).Assembly,
        typeof(OilCondition.Interactive.ResultHtml).Assembly,
        typeof(OilCondition.Planning.UnitSchedule).Assembly,
        typeof(OilCondition.Reporting.ConditionReport).Assembly,
#endif
    ];

    [Fact]
    public void Every_public_parameter_is_in_the_vocabulary()
    {
        var known = KnownNames();
        var unknown =
            from type in Packages.SelectMany(assembly => assembly.GetExportedTypes())
            from member in type.GetMembers(
                    BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly
                )
                .OfType<MethodBase>()
            where !member.IsDefined(typeof(System.Runtime.CompilerServices.CompilerGeneratedAttribute))
            from parameter in member.GetParameters()
            where !known.Contains(parameter.Name!)
            select $"{parameter.Name} of {type.Name}.{member.Name}";

        unknown.Distinct(StringComparer.Ordinal).ShouldBeEmpty();
    }

    [Fact]
    public void The_vocabulary_was_read() => KnownNames().ShouldContain("relativeSaturation");

    private static HashSet<string> KnownNames() =>
        [
            .. TableRow()
                .Matches(RepositoryFiles.Read("docs", "vocabulary.md"))
                .SelectMany(row => row.Groups["names"].Value.Split(',', StringSplitOptions.TrimEntries)),
        ];

    [GeneratedRegex(@"^\| (?<names>[a-zA-Z0-9, ]+) \|", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex TableRow();
}
