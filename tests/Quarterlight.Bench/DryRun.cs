using System.Diagnostics;
using System.Reflection;
using BenchmarkDotNet.Attributes;

namespace Quarterlight.Bench;

/// <summary>
/// Runs each benchmark once, to see that it still works: every value of its parameters, its set-up with all it compares, the code, its clean-up.
/// Without BenchmarkDotNet, which sets a class up anew for each of its benchmarks and compiles a program for each.
/// </summary>
public static class DryRun
{
    // Whatever else a benchmark may be marked with would be passed over in silence.
    private static readonly Type[] s_known = [typeof(BenchmarkAttribute), typeof(GlobalSetupAttribute), typeof(GlobalCleanupAttribute), typeof(ParamsAttribute), typeof(MemoryDiagnoserAttribute)];

    /// <summary>Runs the benchmarks of these classes.</summary>
    /// <exception cref="InvalidOperationException">A benchmark found its ways to differ, a class has none, or it has marks that are not known here.</exception>
    public static async Task RunAsync(IEnumerable<Type> classes)
    {
        foreach (Type type in classes)
        {
            var watch = Stopwatch.StartNew();
            Refuse(type);
            MethodInfo[] benchmarks = [.. Marked<BenchmarkAttribute>(type)];
            if (benchmarks.Length == 0)
            {
                throw new InvalidOperationException($"{type.Name} has no benchmark.");
            }

            PropertyInfo? parameter = type.GetProperties().SingleOrDefault(p => p.IsDefined(typeof(ParamsAttribute)));
            foreach (object? value in parameter?.GetCustomAttribute<ParamsAttribute>()!.Values ?? [null])
            {
                object one = Activator.CreateInstance(type)!;
                parameter?.SetValue(one, value);
                if (one is LookupBench lookup)
                {
                    lookup.CallCount = LookupBench.Fewest;
                }

                await EachAsync(one, Marked<GlobalSetupAttribute>(type));
                await EachAsync(one, benchmarks);
                await EachAsync(one, Marked<GlobalCleanupAttribute>(type));
            }

            Console.WriteLine($"{type.Name}: {string.Join(", ", benchmarks.Select(b => b.Name))}, {watch.Elapsed.TotalSeconds:0.0} s");
        }
    }

    private static IEnumerable<MethodInfo> Marked<T>(Type type)
        where T : Attribute => type.GetMethods().Where(m => m.IsDefined(typeof(T)));

    private static async Task EachAsync(object one, IEnumerable<MethodInfo> methods)
    {
        foreach (MethodInfo method in methods)
        {
            if (method.Invoke(one, BindingFlags.DoNotWrapExceptions, null, [], null) is Task running)
            {
                await running;
            }
        }
    }

    private static void Refuse(Type type)
    {
        IEnumerable<Attribute> marks = type.GetCustomAttributes().Concat(type.GetMembers().SelectMany(m => m.GetCustomAttributes()));
        if (marks.FirstOrDefault(m => m.GetType().Namespace == typeof(BenchmarkAttribute).Namespace && !s_known.Contains(m.GetType())) is { } mark)
        {
            throw new InvalidOperationException($"{type.Name} is marked {mark.GetType().Name}, which a dry run does not know.");
        }
    }
}
