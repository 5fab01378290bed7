using System.Reflection;
using System.Runtime.Loader;
using OilCondition.Planning;
using static OilCondition.Tests.Planning.Plant;

namespace OilCondition.Tests.Planning;

/// <summary>On a machine for which there is no native library of the solver.</summary>
public class MissingSolverTests
{
    [Fact]
    public void The_plan_stands_without_the_solver()
    {
        var text = (string)
            new WithoutNativeLibraries()
                .LoadFromAssemblyName(typeof(MissingSolverTests).Assembly.GetName())
                .GetType(typeof(MissingSolverTests).FullName!)!
                .GetMethod(nameof(PlanThatIsNotProven), BindingFlags.Static | BindingFlags.NonPublic)!
                .Invoke(null, null)!;

        text.ShouldContain("Next: M");
        text.ShouldContain("The solver did not search");
        PlanThatIsNotProven().ShouldNotContain("The solver did not search");
    }

    private static string PlanThatIsNotProven()
    {
        var random = new Random(1);
        var tasks = Enumerable
            .Range(0, 70)
            .Select(i => Task($"M{i:00}", random.Next(5, 30), random.Next(0, 900), random.Next(1, 9)))
            .ToList();
        return Planned(tasks, options: new SchedulingOptions(Start, TimeSpan.FromHours(1), effort: 0.05)).ToString();
    }

    /// <summary>These assemblies and the solver's once more, and no native library for them.</summary>
    private sealed class WithoutNativeLibraries : AssemblyLoadContext
    {
        private static readonly string Folder = Path.GetDirectoryName(typeof(MissingSolverTests).Assembly.Location)!;

        protected override Assembly? Load(AssemblyName assemblyName) =>
            assemblyName.Name is "OilCondition.Tests" or "OilCondition.Planning" or "Google.OrTools"
                ? LoadFromAssemblyPath(Path.Combine(Folder, assemblyName.Name + ".dll"))
                : null;

        protected override nint LoadUnmanagedDll(string unmanagedDllName) =>
            throw new DllNotFoundException(unmanagedDllName);
    }
}
