using System.Text.Json;
using Json.Schema;
using OilCondition.Contracts;
using OilCondition.Tests.Architecture;
using Schemas;

namespace OilCondition.Tests.Contract;

/// <summary>The published schemas are those of the classes, and the classes' words those of the library.</summary>
public class SchemaFileTests
{
    [Fact]
    public void The_published_schemas_are_what_the_classes_give()
    {
        foreach (var schema in ContractSchema.All)
        {
            RepositoryFiles
                .Read("docs", "schemas", schema.FileName)
                .ShouldBe(schema.Write(), $"{schema.FileName} is stale: dotnet run --project eng/Schemas");
        }

        Directory
            .EnumerateFiles(RepositoryFiles.PathOf("docs", "schemas"))
            .Select(Path.GetFileName)
            .ShouldBe(ContractSchema.All.Select(schema => schema.FileName), ignoreOrder: true);
    }

    [Fact]
    public void Every_schema_keeps_to_draft_2020_12()
    {
        foreach (var schema in ContractSchema.All)
        {
            using var json = JsonDocument.Parse(schema.Write());
            MetaSchemas.Draft202012.Evaluate(json.RootElement).IsValid.ShouldBeTrue(schema.Id);
            json.RootElement.GetProperty("$id").GetString().ShouldBe($"urn:oilcondition:{schema.Id}:1");
        }
    }

    [Fact]
    public void Every_field_is_described_and_a_unit_in_its_name_is_said()
    {
        foreach (var schema in ContractSchema.All)
        {
            using var json = JsonDocument.Parse(schema.Write());
            var parts = json.RootElement.GetProperty("$defs").EnumerateObject().Select(one => one.Value);
            foreach (
                var field in parts
                    .Append(json.RootElement)
                    .SelectMany(part => part.GetProperty("properties").EnumerateObject())
            )
            {
                field.Value.GetProperty("description").GetString()!.Length.ShouldBeGreaterThan(3, field.Name);
                if (
                    field.Name.EndsWith("Celsius", StringComparison.Ordinal)
                    && field.Value.TryGetProperty("type", out _)
                )
                {
                    field.Value.GetProperty("unit").GetString().ShouldBe("°C", field.Name);
                }
            }
        }
    }

    /// <summary>A word that the library writes and the classes do not know would be refused by everyone who checks.</summary>
    [Fact]
    public void Words_that_are_named_after_an_enumeration_are_its_members()
    {
        var enumerations = typeof(Source).Assembly.GetTypes().Where(type => type.IsEnum).ToLookup(type => type.Name);
        var words = typeof(KnownWords)
            .GetFields(System.Reflection.BindingFlags.Public | System.Reflection.BindingFlags.Static)
            .Select(field => (Name: field.Name.Split("But"), Words: ((string)field.GetRawConstantValue()!).Split(' ')))
            .Where(one => enumerations.Contains(one.Name[0]))
            .ToList();
        words.Count.ShouldBeGreaterThan(35);
        foreach (var (name, known) in words)
        {
            var members = Enum.GetNames(enumerations[name[0]].Single());
            var without = members
                .Where(member => name.Length > 1 && name[1].Contains(member, StringComparison.Ordinal))
                .ToList();
            without.Count.ShouldBe(
                name.Length > 1
                    ? name[1] == "DrainAndRefill"
                        ? 1
                        : name[1].Split("And").Length
                    : 0
            );
            known.ShouldBe(members.Except(without).Select(Kebab), name[0]);
        }
    }

    [Fact]
    public void Events_are_oil_changes_top_ups_and_the_treatments_that_keep_the_oil() =>
        KnownWords.EventKind.ShouldBe($"oil-change top-up {KnownWords.TreatmentKindButDrainAndRefill}");

    private static string Kebab(string name) =>
        string.Concat(
            name.Select((letter, i) => (i > 0 && char.IsUpper(letter) ? "-" : "") + char.ToLowerInvariant(letter))
        );
}
