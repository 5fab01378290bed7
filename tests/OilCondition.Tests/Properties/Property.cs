using System.Globalization;
using CsCheck;
using Xunit.Sdk;

namespace OilCondition.Tests.Properties;

/// <summary>
/// Tries a property on examples that are the same in every run. CsCheck's own loop fixes only the first example by its seed and draws the others anew, so
/// that a rare counterexample turns a good commit red.
/// </summary>
/// <remarks>
/// To look for counterexamples: OILCONDITION_SEED draws other examples, OILCONDITION_EXAMPLES multiplies their number. A failure prints its seed.
/// </remarks>
internal static class Property
{
    private static readonly ulong Seed = Setting("OILCONDITION_SEED", 2026);
    private static readonly ulong Factor = Setting("OILCONDITION_EXAMPLES", 1);

    public static void Holds<T>(this Gen<T> examples, Action<T> property, int iter = 100)
    {
        var random = new PCG(1, Seed);
        for (var i = 0UL; i < (ulong)iter * Factor; i++)
        {
            var example = examples.Generate(random, null, out _);
            try
            {
                property(example);
            }
            catch (Exception fault)
            {
                throw new XunitException($"Seed {Seed}, example {i}: {Check.Print(example)}\n{fault.Message}", fault);
            }
        }
    }

    public static void Holds<T1, T2>(this Gen<(T1, T2)> examples, Action<T1, T2> property, int iter = 100) =>
        examples.Holds(e => property(e.Item1, e.Item2), iter);

    public static void Holds<T1, T2, T3>(
        this Gen<(T1, T2, T3)> examples,
        Action<T1, T2, T3> property,
        int iter = 100
    ) => examples.Holds(e => property(e.Item1, e.Item2, e.Item3), iter);

    public static void Holds<T1, T2, T3, T4>(
        this Gen<(T1, T2, T3, T4)> examples,
        Action<T1, T2, T3, T4> property,
        int iter = 100
    ) => examples.Holds(e => property(e.Item1, e.Item2, e.Item3, e.Item4), iter);

    public static void Holds<T1, T2, T3, T4, T5>(
        this Gen<(T1, T2, T3, T4, T5)> examples,
        Action<T1, T2, T3, T4, T5> property,
        int iter = 100
    ) => examples.Holds(e => property(e.Item1, e.Item2, e.Item3, e.Item4, e.Item5), iter);

    public static void Holds<T1, T2, T3, T4, T5, T6>(
        this Gen<(T1, T2, T3, T4, T5, T6)> examples,
        Action<T1, T2, T3, T4, T5, T6> property,
        int iter = 100
    ) => examples.Holds(e => property(e.Item1, e.Item2, e.Item3, e.Item4, e.Item5, e.Item6), iter);

    private static ulong Setting(string name, ulong usual) =>
        ulong.TryParse(
            Environment.GetEnvironmentVariable(name),
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out var set
        )
            ? set
            : usual;
}
