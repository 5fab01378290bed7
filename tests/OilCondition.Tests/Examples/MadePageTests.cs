using OilCondition.Cleanliness;
using OilCondition.Tests.Architecture;
using OilCondition.Thermal;
using OilCondition.Viscosity;
using OilCondition.Water;
using Pages;

namespace OilCondition.Tests.Examples;

/// <summary>The pages that are made of the code say what it says now.</summary>
public class MadePageTests
{
    [Fact]
    public void Sources_and_cautions_are_what_the_code_has()
    {
        foreach (var (name, text) in MadePages.All)
        {
            RepositoryFiles.Read("docs", name).ShouldBe(text, $"{name} is stale: dotnet run --project eng/Pages");
        }
    }

    /// <summary>Reflection that found nothing would make a page that is fresh and empty.</summary>
    [Fact]
    public void No_source_that_stands_in_the_code_is_left_out()
    {
        var page = MadePages.All.Single(one => one.Name == "sources.md").Text;
        Source[] sources =
        [
            Iso4406.Source,
            As4059.Source,
            ViscosityIndex.Source,
            IsoViscosityGrade.All[^1].Source,
            ThermalExpansion.LubricatingOil.Source,
            Measurands.WaterContent.PrecisionSource!,
            TargetCodeSet.StarterSet.Targets[0].Source,
            .. PublishedSaturationCurves.All.Select(curve => curve.Source),
        ];

        sources.ShouldAllBe(source => page.Contains($"| {source} |", StringComparison.Ordinal));
    }
}
