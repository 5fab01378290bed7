using System.Collections;
using System.Reflection;
using OilCondition;
using OilCondition.Limits;
using OilCondition.Text;
using OilCondition.Water;
using UnitsNet;

namespace Pages;

/// <summary>Every source of the built-in formulas, tables, curves, precisions and limits, with what rests on it.</summary>
/// <remarks>Found by reflection: what the static fields of the library hold, and what their public properties give.</remarks>
internal static class SourcesPage
{
    private const BindingFlags Statics = BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic;
    private const int Depth = 3;

    private const string Head = """
        # Sources

        **What it answers.** Where the built-in figures come from, and how strong each source is. Strongest first.

        Made from the code by `dotnet run --project eng/Pages`; a test fails when it is stale. 'Seen in reproduction' means that the document itself was not
        seen. 'Common practice, no source' is a fact of the trade. 'From memory' is what nobody has checked.

        Formulas that carry no source with their results have it on the page of their room: [water](water.md), [heat](thermal.md),
        [cleanliness](cleanliness.md), [viscosity](viscosity.md), [trends](statistics-trends.md), [exponential fit](statistics-exponential-fit.md),
        [remaining life](prognosis.md), [treatments](treatment.md).

        Do look here before you rely on a figure, and replace weak ones by your own. Don't quote a standard from this page: read the standard.


        """;

    public static string Write()
    {
        var text =
            Head
            + "## Formulas, tables, curves and precisions\n\n"
            + MadePages.Row("source", "what rests on it")
            + "|---|---|\n";
        foreach (
            var group in BuiltIn()
                .GroupBy(one => one.Source)
                .OrderBy(group => group.Key.Kind)
                .ThenBy(group => group.Key.ToString(), StringComparer.Ordinal)
        )
        {
            text += MadePages.Row(group.Key.ToString(), string.Join(", ", group.Select(one => one.What).Distinct()));
        }

        text +=
            "\n## Starting limits\n\nThey are points to begin at; none claims to follow a standard that was not seen.\n\n";
        text += MadePages.Row("equipment", "limit", "source") + "|---|---|---|\n";
        foreach (var equipment in Enum.GetValues<StarterEquipment>())
        {
            foreach (var limit in LimitSet.Starter(equipment).Limits)
            {
                text += MadePages.Row(PlainText.Spaced(equipment), limit.ToString(), limit.Source.ToString());
            }
        }

        return text;
    }

    private static IEnumerable<(Source Source, string What)> BuiltIn()
    {
        var statics =
            from type in typeof(Source).Assembly.GetTypes()
            where
                !type.ContainsGenericParameters
                && type.Namespace?.StartsWith(nameof(OilCondition), StringComparison.Ordinal) == true
            orderby type.FullName
            from field in type.GetFields(Statics)
            where !field.IsLiteral && !field.FieldType.IsPointer && !field.FieldType.IsByRefLike
            from found in Of(field.GetValue(null), $"`{type.Name}`", Depth)
            select found;

        // A curve that only a call makes has its source all the same.
        var hydrocarbon = SaturationCurve.FromHydrocarbon("hydrocarbon", 0.16, MolarMass.FromGramsPerMole(400));
        return statics
            .Where(one => one.Source.Kind != SourceKind.UserData)
            .Append((hydrocarbon.Source, $"`{nameof(SaturationCurve.FromHydrocarbon)}`"));
    }

    private static IEnumerable<(Source Source, string What)> Of(object? value, string what, int depth) =>
        value switch
        {
            Source source => [(source, what)],
            null or string => [],
            _ when depth == 0 => [],
            IDictionary => [],
            IEnumerable items => items.Cast<object?>().SelectMany(item => Of(item, what, depth - 1)),
            _ when IsLazy(value.GetType()) => Of(value.GetType().GetProperty("Value")!.GetValue(value), what, depth),
            _ when IsOurs(value.GetType()) => value
                .GetType()
                .GetProperties(BindingFlags.Instance | BindingFlags.Public)
                .Where(property => MayHold(property.PropertyType))
                .SelectMany(property => Of(property.GetValue(value), Named(value, property), depth - 1)),
            _ => [],
        };

    private static bool IsLazy(Type type) => type.IsGenericType && type.GetGenericTypeDefinition() == typeof(Lazy<>);

    private static bool IsOurs(Type type) => type.Assembly == typeof(Source).Assembly && !type.IsEnum;

    private static bool MayHold(Type type) =>
        type == typeof(Source) || (type.IsGenericType && typeof(IEnumerable).IsAssignableFrom(type));

    /// <summary>What people call a thing: by its name, component or number, with the property where it is not simply its source.</summary>
    private static string Named(object value, PropertyInfo property)
    {
        var type = value.GetType();
        var name = (type.GetProperty("Name") ?? type.GetProperty("Component") ?? type.GetProperty("Number"))?.GetValue(
            value
        );
        return property.Name switch
        {
            nameof(Measurand.PrecisionSource) => $"precision of {name}",
            _ when name is string => name.ToString()!,
            _ => $"`{type.Name}` {name}".Trim(),
        };
    }
}
