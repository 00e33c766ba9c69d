package kill

import (
	"fmt"
	"os"
	"runtime"
	"strings"
	"syscall"
)

// Can tells whether Run works on this system.
const Can = true

const (
	noThread   = 0x20000000 // __WNOTHREAD: children of this thread alone
	allKinds   = 0x40000000 // __WALL: threads too
	exitKill   = 0x100000   // PTRACE_O_EXITKILL
	cloneEvent = syscall.PTRACE_O_TRACECLONE | syscall.PTRACE_O_TRACEFORK | syscall.PTRACE_O_TRACEVFORK
)

// changing are the system calls that change files by name or handle; true: they may need room.
var changing = map[uint64]bool{
	syscall.SYS_WRITE: true, syscall.SYS_PWRITE64: true, syscall.SYS_FSYNC: true, syscall.SYS_OPENAT: true,
	syscall.SYS_MKDIRAT: true, syscall.SYS_MKDIR: true, syscall.SYS_LINKAT: true, syscall.SYS_LINK: true,
	syscall.SYS_RENAME: false, syscall.SYS_RENAMEAT: false, 316: false, // renameat2
	syscall.SYS_UNLINK: false, syscall.SYS_UNLINKAT: false, syscall.SYS_RMDIR: false,
	syscall.SYS_FTRUNCATE: false, syscall.SYS_TRUNCATE: false, syscall.SYS_FCHMOD: false, syscall.SYS_FCHMODAT: false,
}

// Run runs a program, found by its path, in a folder and with an environment, and says nothing of
// what it writes to its screen.
func Run(program string, args []string, folder string, env []string, f Fate) (End, error) {
	runtime.LockOSThread() // ptrace is by thread
	defer runtime.UnlockOSThread()
	null, err := os.OpenFile(os.DevNull, os.O_RDWR, 0)
	if err != nil {
		return End{}, err
	}
	defer null.Close()
	p, err := os.StartProcess(program, append([]string{program}, args...), &os.ProcAttr{Dir: folder, Env: env,
		Files: []*os.File{null, null, null}, Sys: &syscall.SysProcAttr{Ptrace: true, Pdeathsig: syscall.SIGKILL}})
	if err != nil {
		return End{}, err
	}
	t := &traced{pid: p.Pid, fate: f, inside: map[int]bool{}, failing: map[int]bool{}}
	defer p.Release()
	if err := t.begin(); err != nil {
		return End{}, err
	}
	for {
		over, err := t.next()
		if over || err != nil {
			return t.end, err
		}
	}
}

// traced is a program that is being run.
type traced struct {
	pid     int
	fate    Fate
	inside  map[int]bool // threads that are in a system call
	failing map[int]bool // those whose call is to fail
	end     End
}

func (t *traced) begin() error {
	var status syscall.WaitStatus
	if _, err := syscall.Wait4(t.pid, &status, allKinds, nil); err != nil || !status.Stopped() {
		return fmt.Errorf("the program did not stop at its start: %v, %v", status, err)
	}
	if err := syscall.PtraceSetOptions(t.pid, syscall.PTRACE_O_TRACESYSGOOD|cloneEvent|exitKill); err != nil {
		return err
	}
	return syscall.PtraceSyscall(t.pid, 0)
}

// next lets the program run up to the next stop of one of its threads.
func (t *traced) next() (over bool, err error) {
	var status syscall.WaitStatus
	tid, err := syscall.Wait4(-1, &status, allKinds|noThread, nil)
	if err != nil {
		return false, err
	}
	if status.Exited() || status.Signaled() {
		if tid == t.pid {
			t.end.Code = status.ExitStatus()
		}
		return tid == t.pid, nil
	}
	pass := 0
	switch sig := status.StopSignal(); sig {
	case syscall.SIGTRAP | 0x80:
		if err := t.call(tid); err != nil {
			return false, gone(err)
		}
	case syscall.SIGTRAP, syscall.SIGSTOP: // a new thread
	default:
		pass = int(sig)
	}
	return false, gone(syscall.PtraceSyscall(tid, pass))
}

// gone passes over that a thread is gone meanwhile.
func gone(err error) error {
	if err == syscall.ESRCH {
		return nil
	}
	return err
}

// call looks at a system call as a thread goes in, and as it comes out.
func (t *traced) call(tid int) error {
	t.inside[tid] = !t.inside[tid]
	var regs syscall.PtraceRegs
	if t.inside[tid] {
		if err := syscall.PtraceGetRegs(tid, &regs); err != nil || !t.changes(&regs) {
			return err
		}
		return t.meet(tid, &regs)
	}
	if !t.failing[tid] {
		return nil
	}
	delete(t.failing, tid)
	if err := syscall.PtraceGetRegs(tid, &regs); err != nil {
		return err
	}
	regs.Rax = -uint64(t.fate.Errno)
	return syscall.PtraceSetRegs(tid, &regs)
}

// meet lets a call meet its fate.
func (t *traced) meet(tid int, regs *syscall.PtraceRegs) error {
	t.end.Calls++
	if t.fate.At == 0 || t.end.Calls < t.fate.At {
		return nil
	}
	if t.fate.Errno == 0 {
		t.end.Killed = true
		return syscall.Kill(t.pid, syscall.SIGKILL)
	}
	if !t.fate.All && !changing[regs.Orig_rax] {
		return nil
	}
	t.failing[tid] = true
	regs.Orig_rax = ^uint64(0) // no call
	return syscall.PtraceSetRegs(tid, regs)
}

// changes tells whether a call changes a file.
func (t *traced) changes(regs *syscall.PtraceRegs) bool {
	_, does := changing[regs.Orig_rax]
	switch regs.Orig_rax {
	case syscall.SYS_OPENAT:
		return regs.Rdx&(syscall.O_CREAT|syscall.O_TRUNC) != 0
	case syscall.SYS_WRITE, syscall.SYS_PWRITE64, syscall.SYS_FSYNC:
		to, err := os.Readlink(fmt.Sprintf("/proc/%d/fd/%d", t.pid, regs.Rdi))
		return err == nil && strings.HasPrefix(to, t.fate.Folder)
	}
	return does
}
