using System.Reflection;
using System.Text.RegularExpressions;

namespace OilCondition.Tests.Architecture;

/// <summary>
/// The public surface stays small: at most 240 types in the core, 200 of the refit and 40 for the planned
/// decisions, sizing and backtest; and each has a user. A user is a package, an example, the README, another
/// room, or the public surface of a type that has a user.
/// </summary>
public partial class PublicTypeTests
{
    private const int MostTypes = 240;

    private static readonly Type[] PublicTypes =
    [
        .. typeof(Source).Assembly.GetExportedTypes().Where(type => !type.IsNested),
    ];

    [Fact]
    public void The_core_has_at_most_two_hundred_and_forty_public_types() =>
        PublicTypes.Length.ShouldBeLessThanOrEqualTo(MostTypes);

    [Fact]
    public void Every_public_type_has_a_user_outside_its_own_tests()
    {
        var named = NamesOutside();
        var used = new HashSet<Type>(PublicTypes.Where(type => named(type)));
        used.Count.ShouldBeGreaterThan(PublicTypes.Length / 2);
        var open = new Queue<Type>(used);
        while (open.TryDequeue(out var type))
        {
            foreach (var shown in ShownBy(type).Where(used.Add))
            {
                open.Enqueue(shown);
            }
        }

        PublicTypes.Where(type => !used.Contains(type)).Select(type => type.FullName).ShouldBeEmpty();
    }

    /// <summary>Whether a type is named in a package, an example, the README or another room of the core.</summary>
    private static Func<Type, bool> NamesOutside()
    {
        var core = Sources("src", "OilCondition").ToList();
        var outside = Sources("examples")
            .Concat(Sources("src", "OilCondition.LabFiles"))
            .Concat(Sources("src", "OilCondition.Reporting"))
            .SelectMany(file => file.Words)
            .Concat(WordsOf(RepositoryFiles.Read("README.md")))
            .ToHashSet(StringComparer.Ordinal);
        return type =>
        {
            var name = type.Name.Split('`')[0];
            var room = core.First(file => file.Declares(name)).Room;
            return outside.Contains(name)
                || core.Any(file => file.Room != room && file.Words.Contains(name))
                || IsOfExtensions(type) && type.GetMethods(Own).All(method => outside.Contains(method.Name));
        };
    }

    private const BindingFlags Own = BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly;

    /// <summary>Such a type is called without its name, by what it adds to another one.</summary>
    private static bool IsOfExtensions(Type type) =>
        type.IsDefined(typeof(System.Runtime.CompilerServices.ExtensionAttribute), inherit: false);

    /// <summary>The types of the core in a type's public surface, with those of its nested types.</summary>
    private static IEnumerable<Type> ShownBy(Type type)
    {
        const BindingFlags Surface =
            BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        var shown = new List<Type>();
        if (type.BaseType is { } parent)
        {
            shown.Add(parent);
        }

        foreach (var method in type.GetMembers(Surface).OfType<MethodBase>())
        {
            shown.AddRange(method.GetParameters().Select(parameter => parameter.ParameterType));
            shown.Add((method as MethodInfo)?.ReturnType ?? typeof(void));
        }

        shown.AddRange(type.GetFields(Surface).Select(field => field.FieldType));
        var parts = shown.SelectMany(Parts).Select(Outermost).Where(PublicTypes.Contains);
        return type.GetNestedTypes().SelectMany(ShownBy).Concat(parts).Distinct();
    }

    private static IEnumerable<Type> Parts(Type type)
    {
        if (type.HasElementType)
        {
            return Parts(type.GetElementType()!);
        }

        var self = type.IsGenericType ? type.GetGenericTypeDefinition() : type;
        return type.GetGenericArguments().SelectMany(Parts).Append(self);
    }

    private static Type Outermost(Type type) => type.DeclaringType is { } outer ? Outermost(outer) : type;

    private static IEnumerable<SourceFile> Sources(params string[] folder)
    {
        var root = RepositoryFiles.PathOf(folder);
        return Directory
            .EnumerateFiles(root, "*.cs", SearchOption.AllDirectories)
            .Select(file => (Path: file, Parts: Path.GetRelativePath(root, file).Split('/', '\\')))
            .Where(file => !file.Parts.Any(part => part is "bin" or "obj"))
            .Select(file => new SourceFile(file.Parts[0], File.ReadAllText(file.Path)));
    }

    private static HashSet<string> WordsOf(string text) =>
        Word().Matches(Comment().Replace(text, "")).Select(word => word.Value).ToHashSet(StringComparer.Ordinal);

    [GeneratedRegex(@"\w+", RegexOptions.None, 1000)]
    private static partial Regex Word();

    [GeneratedRegex("//.*$", RegexOptions.Multiline, 1000)]
    private static partial Regex Comment();

    private sealed class SourceFile(string room, string text)
    {
        public string Room { get; } = room;

        public HashSet<string> Words { get; } = WordsOf(text);

        public bool Declares(string name) =>
            Regex.IsMatch(
                text,
                $@"^public ([a-z]+ )*(class|struct|record struct|record|enum|interface) {name}\b",
                RegexOptions.Multiline,
                TimeSpan.FromSeconds(1)
            );
    }
}
