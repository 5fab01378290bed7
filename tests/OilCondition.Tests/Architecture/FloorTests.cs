using System.Reflection;
using System.Reflection.Emit;
using OilCondition.Sources;

namespace OilCondition.Tests.Architecture;

/// <summary>The floors of the house (docs/architecture.md): a room uses only rooms on lower floors, and itself.</summary>
public class FloorTests
{
    private static readonly Dictionary<string, int> Floors = new(StringComparer.Ordinal)
    {
        ["Guards"] = 0,
        ["Sources"] = 0,
        ["Water"] = 1,
        ["Cleanliness"] = 1,
        ["Viscosity"] = 1,
        ["Thermal"] = 1,
        ["Statistics"] = 1,
        ["Sampling"] = 2,
        ["Limits"] = 3,
        ["Purification"] = 3,
        ["Prognosis"] = 3,
        ["Advice"] = 4,
    };

    private static readonly Dictionary<short, OpCode> OpCodesByValue = typeof(OpCodes)
        .GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(field => (OpCode)field.GetValue(null)!)
        .ToDictionary(operation => operation.Value);

    private static readonly Assembly Core = typeof(Source).Assembly;

    [Fact]
    public void Every_namespace_is_a_room_of_the_house() =>
        Core.GetTypes().Where(IsOurs).Select(Room).Distinct().Where(room => !Floors.ContainsKey(room)).ShouldBeEmpty();

    [Fact]
    public void No_room_reaches_up_or_sideways()
    {
        var breaches =
            from type in Core.GetTypes().Where(IsOurs)
            from used in TypesUsedBy(type).Where(IsOurs)
            let room = Room(type)
            let to = Room(used)
            where room != to && Floors[to] >= Floors[room] && to != "Guards"
            select $"{room}.{type.Name} uses {to}.{used.Name}";

        breaches.Distinct(StringComparer.Ordinal).ShouldBeEmpty();
    }

    [Fact]
    public void The_check_sees_a_use_inside_a_method_body() =>
        TypesUsedBy(typeof(ProbeOfTheCheck)).ShouldContain(typeof(Source));

    private static bool IsOurs(Type type) =>
        type.Assembly == Core && (type.Namespace ?? "").StartsWith("OilCondition.", StringComparison.Ordinal);

    private static string Room(Type type) => type.Namespace!.Split('.')[1];

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
