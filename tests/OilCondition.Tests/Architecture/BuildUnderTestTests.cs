using System.Reflection;
using System.Runtime.Versioning;

namespace OilCondition.Tests.Architecture;

public class BuildUnderTestTests
{
    [Fact]
    public void The_tests_run_against_the_build_that_their_project_names()
    {
        var framework = typeof(Source).Assembly.GetCustomAttribute<TargetFrameworkAttribute>()!.FrameworkName;
#if NETSTANDARD_BUILD
        framework.ShouldBe(".NETStandard,Version=v2.0");
#else
        framework.ShouldBe(".NETCoreApp,Version=v10.0");
#endif
    }
}
