using System.Reflection;
using System.Reflection.Emit;
using System.Text.RegularExpressions;
using OilCondition.Limits;

namespace OilCondition.Tests.Architecture;

/// <summary>
/// The floors of the house (docs/architecture.md): a room uses only rooms on lower floors, and itself. A room is a folder of
/// src/OilCondition; folders inside a room use one another in one direction only.
/// </summary>
public partial class FloorTests
{
    private static readonly Dictionary<string, int> Floors = new(StringComparer.Ordinal)
    {
        ["Text"] = 0,
        ["Sources"] = 0,
        ["Statistics"] = 0,
        ["Water"] = 1,
        ["Cleanliness"] = 1,
        ["Viscosity"] = 1,
        ["Thermal"] = 1,
        ["Sampling"] = 2,
        ["Limits"] = 3,
        ["Prognosis"] = 3,
        ["Treatment"] = 3,
        ["Cleanup"] = 4,
        ["Station"] = 4,
        ["Advice"] = 5,
    };

    /// <summary>Rooms whose types are the words of the job; the others have a namespace of their own name.</summary>
    private static readonly string[] RootRooms = ["Sources", "Sampling", "Station", "Advice"];

    private static readonly string[] RootTypes = [nameof(LimitSet), nameof(NaturalScale), "Arrival`1"];

    private static readonly Dictionary<short, OpCode> OpCodesByValue = typeof(OpCodes)
        .GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(field => (OpCode)field.GetValue(null)!)
        .ToDictionary(operation => operation.Value);

    private static readonly Assembly Core = typeof(Source).Assembly;

    private static readonly Lazy<Dictionary<string, string>> FolderByType = new(ReadFolders);

    [Fact]
    public void Every_folder_is_a_room_of_the_house() =>
        FolderByType.Value.Values.Select(RoomOf).Distinct(StringComparer.Ordinal).ShouldBeSubsetOf(Floors.Keys);

    [Fact]
    public void Every_type_stands_in_the_namespace_of_its_room()
    {
        var strays =
            from type in Core.GetTypes().Where(IsOurs)
            let room = RoomOf(Folder(type))
            let isRoot = RootRooms.Contains(room) || RootTypes.Contains(Outermost(type).Name)
            let expected = isRoot ? "OilCondition" : $"OilCondition.{room}"
            where type.Namespace != expected
            select $"{type.FullName} of {room}";

        strays.ShouldBeEmpty();
    }

    [Fact]
    public void No_room_reaches_up_or_sideways()
    {
        var breaches =
            from pair in Uses()
            let room = RoomOf(Folder(pair.User))
            let to = RoomOf(Folder(pair.Used))
            where room != to && Floors[to] >= Floors[room] && to != "Text"
            select $"{room}.{pair.User.Name} uses {to}.{pair.Used.Name}";

        breaches.Distinct(StringComparer.Ordinal).ShouldBeEmpty();
    }

    [Fact]
    public void Folders_inside_a_room_have_no_circle()
    {
        var uses = Uses()
            .Select(pair =>
                (From: Folder(pair.User), To: Folder(pair.Used), Text: $"{pair.User.Name} uses {pair.Used.Name}")
            )
            .Where(use => use.From != use.To && RoomOf(use.From) == RoomOf(use.To))
            .GroupBy(use => (use.From, use.To))
            .ToDictionary(group => group.Key, group => group.First().Text);

        var circles =
            from pair in uses.Keys
            where Reaches(uses.Keys, pair.To, pair.From)
            select $"{pair.From} -> {pair.To}: {uses[pair]}";

        circles.ShouldBeEmpty();
    }

    [Fact]
    public void The_check_sees_a_use_inside_a_method_body() =>
        TypesUsedBy(typeof(ProbeOfTheCheck)).ShouldContain(typeof(Source));

    private static bool IsOurs(Type type) =>
        type.Assembly == Core
        && !type.HasElementType
        && (
            type.Namespace is "OilCondition"
            || (type.Namespace ?? "").StartsWith("OilCondition.", StringComparison.Ordinal)
        );

    private static IEnumerable<(Type User, Type Used)> Uses() =>
        from type in Core.GetTypes().Where(IsOurs)
        from used in TypesUsedBy(type).Where(IsOurs)
        select (type, used);

    private static bool Reaches(IReadOnlyCollection<(string From, string To)> uses, string from, string to)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal) { from };
        var open = new Queue<string>(seen);
        while (open.TryDequeue(out var folder))
        {
            if (folder == to)
            {
                return true;
            }

            foreach (var next in uses.Where(use => use.From == folder && seen.Add(use.To)))
            {
                open.Enqueue(next.To);
            }
        }

        return false;
    }

    private static Type Outermost(Type type) => type.DeclaringType is { } outer ? Outermost(outer) : type;

    private static string Folder(Type type) => FolderByType.Value[Outermost(type).Name.Split('`')[0]];

    private static string RoomOf(string folder) => folder.Split('/')[0];

    /// <summary>The folder of each type, from the sources: assemblies do not know it.</summary>
    private static Dictionary<string, string> ReadFolders()
    {
        var root = RepositoryFiles.PathOf("src", "OilCondition");
        var folders = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var file in Directory.EnumerateFiles(root, "*.cs", SearchOption.AllDirectories))
        {
            var folder = Path.GetRelativePath(root, Path.GetDirectoryName(file)!).Replace('\\', '/');
            if (folder.Split('/')[0] is "bin" or "obj")
            {
                continue;
            }

            foreach (Match match in TypeDeclaration().Matches(File.ReadAllText(file)))
            {
                folders[match.Groups["name"].Value] = folder;
            }
        }

        return folders;
    }

    [GeneratedRegex(
        @"^(public|internal|file) ([a-z]+ )*(class|struct|record struct|record|enum|interface|delegate \S+) (?<name>\w+)",
        RegexOptions.Multiline | RegexOptions.ExplicitCapture,
        1000
    )]
    private static partial Regex TypeDeclaration();

    /// <summary>Every type in a type's surface and in its method bodies, read from the IL.</summary>
    private static HashSet<Type> TypesUsedBy(Type type)
    {
        const BindingFlags All =
            BindingFlags.Public
            | BindingFlags.NonPublic
            | BindingFlags.Static
            | BindingFlags.Instance
            | BindingFlags.DeclaredOnly;
        var used = new HashSet<Type>();
        Add(used, type.BaseType);
        foreach (var part in type.GetInterfaces())
        {
            Add(used, part);
        }

        foreach (var field in type.GetFields(All))
        {
            Add(used, field.FieldType);
        }

        foreach (var method in type.GetMembers(All).OfType<MethodBase>())
        {
            Add(used, (method as MethodInfo)?.ReturnType);
            foreach (var parameter in method.GetParameters())
            {
                Add(used, parameter.ParameterType);
            }

            AddBody(used, method);
        }

        return used;
    }

    private static void AddBody(HashSet<Type> used, MethodBase method)
    {
        var body = method.GetMethodBody();
        if (body is null)
        {
            return;
        }

        foreach (var local in body.LocalVariables)
        {
            Add(used, local.LocalType);
        }

        var code = body.GetILAsByteArray() ?? [];
        var i = 0;
        while (i < code.Length)
        {
            var value = code[i] == 0xFE ? unchecked((short)(0xFE00 | code[i + 1])) : code[i];
            var operation = OpCodesByValue[value];
            i += operation.Size;
            if (
                operation.OperandType
                is OperandType.InlineField
                    or OperandType.InlineMethod
                    or OperandType.InlineTok
                    or OperandType.InlineType
            )
            {
                AddToken(used, method, BitConverter.ToInt32(code, i));
            }

            i += operation.OperandType switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + 4 * BitConverter.ToInt32(code, i),
                _ => 4,
            };
        }
    }

    private static void AddToken(HashSet<Type> used, MethodBase method, int token)
    {
        var arguments = method.DeclaringType!.IsGenericType ? method.DeclaringType.GetGenericArguments() : null;
        var methodArguments = method.IsGenericMethod ? method.GetGenericArguments() : null;
        var member = method.Module.ResolveMember(token, arguments, methodArguments);
        Add(used, member as Type ?? member?.DeclaringType);
    }

    private static void Add(HashSet<Type> used, Type? type)
    {
        if (type is null || !used.Add(type))
        {
            return;
        }

        Add(used, type.HasElementType ? type.GetElementType() : null);
        foreach (var argument in type.IsGenericType ? type.GetGenericArguments() : [])
        {
            Add(used, argument);
        }
    }

    private static class ProbeOfTheCheck
    {
        public static string Body() => Source.CommonPractice("probe").Text;
    }
}
