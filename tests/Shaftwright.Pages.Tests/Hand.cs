using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.RenderTree;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.JSInterop;
using Shaftwright.JobFile;
using Shaftwright.Pages.Doors;
using Shaftwright.Pages.Outbox;

namespace Shaftwright.Pages.Tests;

/// <summary>A hand at a door that is opened on a job: the page itself, its shelf and its draft, without a browser. It types, leaves
/// the box, and waits until that is on the disk.</summary>
internal sealed class Hand : IAsyncDisposable
{
    private const string JobId = "1";

    private readonly Memory _memory = new();
    private readonly JobShelf _shelf;
    private readonly ServiceProvider _services;
    private Room? _room;
    private DoorPage? _door;

    private Hand()
    {
        _services = new ServiceCollection()
            .AddSingleton<IJSRuntime>(_memory)
            .AddSingleton<NavigationManager, Way>()
            .AddSingleton<DeviceStore>()
            .AddSingleton<Preferences>()
            .AddSingleton<JobShelf>()
            .AddSingleton(TimeProvider.System)
            .AddSupplyValueFromQueryProvider()
            .BuildServiceProvider();
        _shelf = _services.GetRequiredService<JobShelf>();
    }

    /// <summary>The door it stands at.</summary>
    public DoorPage Door => _door ?? throw new InvalidOperationException("No door is open.");

    /// <summary>The job as it is kept on the device.</summary>
    public JsonObject Document => _shelf.Find(JobId)!.Json;

    /// <summary>What was measured and decided, as it is kept on the device.</summary>
    public Job Job => _shelf.Find(JobId)!.Job;

    /// <summary>A job from the stages of its file.</summary>
    public static Job Read(string stages) =>
        JobJson.Read((JsonObject)JsonNode.Parse(Whole(stages))!).Document!.Job;

    /// <summary>A job as its file says it.</summary>
    public static string Written(Job job) =>
        JobJson.WriteObject(JobDocument.Empty with { Job = job }).ToJsonString();

    /// <summary>Opens a door on a job.</summary>
    /// <param name="stages">The job file's stages.</param>
    /// <param name="query">What stands behind the address's question mark.</param>
    /// <param name="at">The question; null for the first.</param>
    public static async Task<Hand> At<TDoor>(string stages, string query = "", string? at = null)
        where TDoor : DoorPage
    {
        var hand = new Hand();
        hand._memory.Arrives(JobId, Whole(stages));
        await hand._services.GetRequiredService<DeviceStore>().Open();
        await hand._shelf.Load();
        await hand.Open<TDoor>(query, at);
        return hand;
    }

    /// <summary>Leaves the door, if one is open, and opens one anew.</summary>
    public async Task Open<TDoor>(string query = "", string? at = null)
        where TDoor : DoorPage
    {
        await Leave();
        ((Way)_services.GetRequiredService<NavigationManager>()).Go(query);
        _room = new Room(_services);
        _door = await _room.Show<TDoor>(
            new() { [nameof(DoorPage.JobId)] = JobId, [nameof(DoorPage.At)] = at }
        );
        Assert.True(Door.Ready);
    }

    /// <summary>Types into a box and leaves it. The unit is the field's own where none is typed.</summary>
    public async Task Type(string key, string text)
    {
        await Do(() =>
        {
            Door.Draft.Settle();
            Door.Draft.Set(key, text);
            Door.Draft.Settle();
        });
    }

    /// <summary>Takes the last change back.</summary>
    public Task Undo() => Do(() => Door.Draft.Undo());

    /// <summary>Another device changes the job.</summary>
    public async Task Elsewhere(Action<JsonObject> change)
    {
        var document = (JsonObject)Document.DeepClone();
        change(document);
        _memory.Arrives(JobId, document.ToJsonString());
        await Do(() => { });
        await _room!.Dispatcher.InvokeAsync(_shelf.Refresh);
    }

    /// <summary>What the door shows under a key.</summary>
    public string Shown(string key) => Door.Draft[key];

    /// <summary>True while something typed here is not part of the job.</summary>
    public bool Leaves => _memory.Drafts.Count > 0;

    /// <summary>The words on the screen.</summary>
    public string Screen() => _room!.Words();

    /// <summary>The job's file: what is evaluated when nobody stands at a door.</summary>
    public JobResult Evaluated() => Workflow.Evaluate(Job);

    public async ValueTask DisposeAsync()
    {
        await Leave();
        await _services.DisposeAsync();
    }

    private async Task Do(Action what)
    {
        await _room!.Dispatcher.InvokeAsync(what);
        await Door.Kept;
        Assert.Null(Door.Trouble);
    }

    private async Task Leave()
    {
        if (_door is not null)
            await _door.Kept;
        if (_room is not null)
            await _room.DisposeAsync();
        _room = null;
        _door = null;
    }

    private static string Whole(string stages)
    {
        var document = JsonNode.Parse(stages)!.AsObject();
        document["format"] = 1;
        document["name"] = "Curlew";
        Assert.Empty(JobJson.Read(document).Refusals);
        return document.ToJsonString();
    }

    /// <summary>Where components live. What they draw is kept as words alone.</summary>
    private sealed class Room(IServiceProvider services)
        : Renderer(services, NullLoggerFactory.Instance)
    {
        public override Dispatcher Dispatcher { get; } = Dispatcher.CreateDefault();

        public async Task<DoorPage> Show<TDoor>(Dictionary<string, object?> parameters)
            where TDoor : DoorPage
        {
            var door = (DoorPage)InstantiateComponent(typeof(TDoor));
            await Dispatcher.InvokeAsync(() =>
                RenderRootComponentAsync(
                    AssignRootComponentId(door),
                    ParameterView.FromDictionary(parameters)
                )
            );
            return door;
        }

        public string Words()
        {
            var words = new System.Text.StringBuilder();
            var ids = new Queue<int>([0]);
            while (ids.TryDequeue(out var id))
            {
                var frames = GetCurrentRenderTreeFrames(id);
                foreach (var frame in frames.Array.Take(frames.Count))
                {
                    if (frame.FrameType == RenderTreeFrameType.Text)
                        words.Append(frame.TextContent).Append(' ');
                    else if (frame.FrameType == RenderTreeFrameType.Markup)
                        words.Append(frame.MarkupContent).Append(' ');
                    else if (frame.FrameType == RenderTreeFrameType.Component)
                        ids.Enqueue(frame.ComponentId);
                }
            }
            return words.ToString();
        }

        protected override void HandleException(Exception exception) =>
            System.Runtime.ExceptionServices.ExceptionDispatchInfo.Throw(exception);

        protected override Task UpdateDisplayAsync(in RenderBatch renderBatch) =>
            Task.CompletedTask;
    }

    private sealed class Way : NavigationManager
    {
        private const string Base = "http://bench/";

        public Way() => Initialize(Base, Base);

        public void Go(string query) => Uri = Base + "?" + query;

        protected override void NavigateToCore(string uri, NavigationOptions options) =>
            Uri = ToAbsoluteUri(uri).AbsoluteUri;
    }
}
