using System.Diagnostics;
using System.Runtime.CompilerServices;

namespace Quarterlight.Discord.Tests.Support;

/// <summary>Waits for what other threads do, with a deadline.</summary>
internal static class Eventually
{
    private static readonly TimeSpan Deadline = TimeSpan.FromSeconds(20);

    public static async Task TrueAsync(Func<bool> condition, Func<string>? otherwise = null, [CallerArgumentExpression(nameof(condition))] string what = "")
    {
        var watch = Stopwatch.StartNew();
        while (!condition())
        {
            if (watch.Elapsed > Deadline)
            {
                Assert.Fail(otherwise is null ? $"not within {Deadline}: {what}" : otherwise());
            }

            await Task.Delay(1, TestContext.Current.CancellationToken);
        }
    }

    /// <summary>The same for something that gives a value; null means not yet.</summary>
    public static async Task<T> NotNullAsync<T>(Func<T?> find, [CallerArgumentExpression(nameof(find))] string what = "")
        where T : class
    {
        T? found = null;
        await TrueAsync(() => (found = find()) is not null, what: what);
        return found!;
    }

    /// <summary>Fails when a task does not end.</summary>
    public static Task EndsAsync(Task task) => task.WaitAsync(Deadline, TestContext.Current.CancellationToken);
}
