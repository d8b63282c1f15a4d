/*
 * Writes down what a program does to files in one folder, so that a power cut can be played back: every write with its
 * bytes, every change of size, name or existence, and every time it waits for the disk. Loaded before the C library with
 * LD_PRELOAD; POWERCUT_FOLDER names the folder, POWERCUT_JOURNAL the file to write to.
 *
 * A line of the journal is text: W <path> <offset> <length> followed by the bytes and a line end; T <path> <size>;
 * S <path>; L <from> <to>; R <from> <to>; U <path>; M <text that the program says to its journal>.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <fcntl.h>
#include <limits.h>
#include <pthread.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <sys/uio.h>
#include <unistd.h>

static pthread_mutex_t turn = PTHREAD_MUTEX_INITIALIZER;
static int journal = -1;
static const char *folder;

#define REAL(type, name, ...) ((type (*)(__VA_ARGS__)) dlsym(RTLD_NEXT, #name))

static void put(const void *bytes, size_t length) {
  const char *at = bytes;
  while (length > 0) {
    ssize_t done = REAL(ssize_t, write, int, const void *, size_t)(journal, at, length);
    if (done <= 0) abort();
    at += done;
    length -= done;
  }
}

static int watched(const char *path) {
  if (!folder) {
    folder = getenv("POWERCUT_FOLDER");
    if (!folder) folder = "";
  }
  return *folder && strncmp(path, folder, strlen(folder)) == 0 && !strstr(path, "-shm");
}

static int path_of(int fd, char *path) {
  char link[64];
  snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  ssize_t length = readlink(link, path, PATH_MAX - 1);
  if (length < 0) return 0;
  path[length] = 0;
  return watched(path);
}

static void begin(const char *format, ...) {
  char line[3 * PATH_MAX];
  va_list values;
  va_start(values, format);
  int length = vsnprintf(line, sizeof line, format, values);
  va_end(values);
  pthread_mutex_lock(&turn);
  if (journal < 0) {
    journal = REAL(int, open, const char *, int, ...)(
        getenv("POWERCUT_JOURNAL"), O_WRONLY | O_CREAT | O_APPEND, 0600);
    if (journal < 0) abort();
  }
  put(line, length);
}

static void end(void) { pthread_mutex_unlock(&turn); }

static void wrote(int fd, const void *bytes, size_t length, off_t offset) {
  char path[PATH_MAX];
  if (fd != journal && path_of(fd, path)) {
    begin("W %s %lld %zu\n", path, (long long) offset, length);
    put(bytes, length);
    put("\n", 1);
    end();
  }
}

ssize_t pwrite64(int fd, const void *bytes, size_t length, off64_t offset) {
  ssize_t done = REAL(ssize_t, pwrite64, int, const void *, size_t, off64_t)(fd, bytes, length, offset);
  if (done > 0) wrote(fd, bytes, done, offset);
  return done;
}

ssize_t pwrite(int fd, const void *bytes, size_t length, off_t offset) {
  return pwrite64(fd, bytes, length, offset);
}

ssize_t write(int fd, const void *bytes, size_t length) {
  off_t offset = lseek(fd, 0, SEEK_CUR);
  ssize_t done = REAL(ssize_t, write, int, const void *, size_t)(fd, bytes, length);
  if (done > 0 && offset >= 0) wrote(fd, bytes, done, offset);
  return done;
}

static void noted(const char *what, int fd) {
  char path[PATH_MAX];
  if (path_of(fd, path)) {
    begin("%s %s\n", what, path);
    end();
  }
}

int ftruncate64(int fd, off64_t size) {
  int done = REAL(int, ftruncate64, int, off64_t)(fd, size);
  char path[PATH_MAX];
  if (done == 0 && path_of(fd, path)) {
    begin("T %s %lld\n", path, (long long) size);
    end();
  }
  return done;
}

int ftruncate(int fd, off_t size) { return ftruncate64(fd, size); }

int fsync(int fd) {
  int done = REAL(int, fsync, int)(fd);
  if (done == 0) noted("S", fd);
  return done;
}

int fdatasync(int fd) {
  int done = REAL(int, fdatasync, int)(fd);
  if (done == 0) noted("S", fd);
  return done;
}

int link(const char *from, const char *to) {
  int done = REAL(int, link, const char *, const char *)(from, to);
  if (done == 0 && watched(to)) {
    begin("L %s %s\n", from, to);
    end();
  }
  return done;
}

int rename(const char *from, const char *to) {
  int done = REAL(int, rename, const char *, const char *)(from, to);
  if (done == 0 && watched(to)) {
    begin("R %s %s\n", from, to);
    end();
  }
  return done;
}

int unlink(const char *path) {
  int done = REAL(int, unlink, const char *)(path);
  if (done == 0 && watched(path)) {
    begin("U %s\n", path);
    end();
  }
  return done;
}
