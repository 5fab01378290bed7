using System.Reflection;
using System.Runtime.CompilerServices;

namespace OilCondition.Tests.Architecture;

/// <summary>What an analyst meets prints itself: no bare type name, and no list of members with seventeen digits. Options are given, not met.</summary>
public class PrintingTests
{
    [Fact]
    public void Every_public_type_that_can_be_held_prints_itself() =>
        typeof(Source)
            .Assembly.GetExportedTypes()
            .Where(type => !type.IsEnum && !type.IsInterface && !(type.IsAbstract && type.IsSealed))
            .Where(type => !type.IsAbstract && !type.Name.EndsWith("Options", StringComparison.Ordinal))
            .Where(type => !PrintsItself(type))
            .Select(type => type.FullName)
            .ShouldBeEmpty();

    private static bool PrintsItself(Type type)
    {
        var text = type.GetMethod(nameof(ToString), Type.EmptyTypes)!;
        return text.DeclaringType != typeof(object)
            && text.DeclaringType != typeof(ValueType)
            && !text.IsDefined(typeof(CompilerGeneratedAttribute));
    }
}
