using System.Reflection;
using Xunit;
using Xunit.Sdk;
using Xunit.v3;

[assembly: TestFramework(typeof(Circuits.Tests.TimeLimit))]

namespace Circuits.Tests;

/// <summary>
/// Gives every test that has no <c>Timeout</c> of its own a time limit, so that a hang fails with the test's name, however the tests are started.
/// </summary>
/// <param name="configuration">The file with the runner's settings, or null.</param>
public sealed class TimeLimit(string? configuration) : XunitTestFramework(configuration)
{
    /// <summary>Many times what the slowest test takes on an idle machine: it is there for hangs, not for slow machines.</summary>
    public static readonly TimeSpan Default = Setting() ?? TimeSpan.FromMinutes(5);

    // What hangs keeps its thread. The pool is slow to make another for the clock, and on a busy machine it makes none.
    private const int Threads = 64;

    private readonly string? configuration = configuration;

    /// <summary>Without settings.</summary>
    public TimeLimit()
        : this(null)
    {
    }

    /// <inheritdoc />
    protected override ITestFrameworkDiscoverer CreateDiscoverer(Assembly assembly)
    {
        ThreadPool.SetMinThreads(Threads, Threads);
        return new Discoverer(new XunitTestAssembly(assembly, configuration));
    }

    // To try the limit out, or for a machine that is much slower.
    private static TimeSpan? Setting() =>
        int.TryParse(Environment.GetEnvironmentVariable("CIRCUITS_TEST_SECONDS"), out var seconds) && seconds > 0 ? TimeSpan.FromSeconds(seconds) : null;

    private sealed class Discoverer(IXunitTestAssembly assembly) : XunitTestFrameworkDiscoverer(assembly)
    {
        protected override async ValueTask<bool> FindTestsForMethod(
            IXunitTestMethod testMethod, ITestFrameworkDiscoveryOptions discoveryOptions, Func<ITestCase, ValueTask<bool>> discoveryCallback)
        {
            foreach (var fact in testMethod.FactAttributes.OfType<FactAttribute>())
            {
                if (fact.Timeout == 0) fact.Timeout = (int)Default.TotalMilliseconds;
            }

            // A theory works out its rows here and not later, where no limit would hold; an exception makes the method a failed test.
            discoveryOptions.SetPreEnumerateTheories(true);
            return await Task.Run(() => base.FindTestsForMethod(testMethod, discoveryOptions, discoveryCallback).AsTask()).WaitAsync(Default);
        }
    }
}
