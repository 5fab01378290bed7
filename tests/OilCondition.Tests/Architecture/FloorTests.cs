using System.Reflection;
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

        // Every aligned four bytes that resolve as a metadata token: over-counts at worst, never misses a token.
        var code = body.GetILAsByteArray() ?? [];
        for (var i = 0; i + 4 <= code.Length; i++)
        {
            var token = BitConverter.ToInt32(code, i);
            if ((token >>> 24) is 0x01 or 0x02 or 0x04 or 0x06 or 0x0A or 0x1B or 0x2B)
            {
                AddToken(used, method, token);
            }
        }
    }

    private static void AddToken(HashSet<Type> used, MethodBase method, int token)
    {
        try
        {
            var arguments = method.DeclaringType!.IsGenericType ? method.DeclaringType.GetGenericArguments() : null;
            var methodArguments = method.IsGenericMethod ? method.GetGenericArguments() : null;
            var member = method.Module.ResolveMember(token, arguments, methodArguments);
            Add(used, member as Type ?? member?.DeclaringType);
        }
        catch (ArgumentException)
        {
            // Four bytes that looked like a token and are none.
        }
        catch (BadImageFormatException)
        {
            // As above.
        }
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
